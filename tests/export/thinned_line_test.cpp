// Thinning: against closed forms of the circle, and against a search over all pieces.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>

#include "export/thinned_line.h"
#include "measure/synthetic_build.h"
#include "render/laid_scene.h"

namespace laywright {
namespace {

double distance_to_piece(const Vec3& place, const Vec3& from, const Vec3& to) {
  const Vec3 along = to - from;
  const double share = std::clamp(glm::dot(place - from, along) / glm::dot(along, along), 0.0, 1.0);
  return glm::length(place - from - share * along);
}

// Of all nodes of the layers from the line, the greatest; each is held against the piece that spans it.
double farthest_node(const NodePlaces& places, const ThinnedLine& line) {
  double farthest = 0.0;
  for (const ThinnedLayer& layer : line.layers) {
    for (std::size_t i = 0; i + 1 < layer.nodes.size(); ++i) {
      const Vec3 from = places.at(layer.nodes[i]), to = places.at(layer.nodes[i + 1]);
      for (std::size_t node = layer.nodes[i]; node < layer.nodes[i + 1]; ++node)
        farthest = std::max(farthest, distance_to_piece(places.at(node), from, to));
    }
  }
  return farthest;
}

}  // namespace

TEST_CASE("without a tolerance every node is kept, each layer from its first to the next one's first") {
  const SceneSource source = small_source();
  const Build& build = source.build();
  const ThinnedLine line = thin_line(build, NodePlaces(build), {}, 0.0);
  REQUIRE(line.layers.size() == build.strokes.size());
  for (std::size_t stroke = 0; stroke < build.strokes.size(); ++stroke) {
    CHECK(line.layers[stroke].layer == stroke + 1);
    CHECK(line.layers[stroke].nodes.front() == build.strokes[stroke].first_node);
    CHECK(line.layers[stroke].nodes.back() == std::min(build.end_of(stroke), build.nodes.size() - 1));
  }
  CHECK(line.nodes() == build.nodes.size() + build.strokes.size() - 1);
}

TEST_CASE("on a circle a piece spans as many stations as its height allows") {
  // The height of an arc of angle a over its chord is r (1 - cos(a / 2)); from memory, elementary geometry.
  constexpr int stations = 360;
  const Build build = synthetic::helix(synthetic::plan_of(synthetic::draft()), stations, 10.0, 0.0, 10.0);
  const double radius = build.nodes.r(0);
  const double station = 2.0 * std::numbers::pi / stations;
  const double arc = radius * (1.0 - std::cos(0.5 * station));
  for (const int wanted : {2, 6, 10}) {
    const double height = radius * (1.0 - std::cos(0.5 * wanted * station));
    const ThinnedLine line = thin_line(build, NodePlaces(build), {}, 1.001 * (height + arc));
    CHECK(line.deviation_mm <= 1.001 * (height + arc));
    CHECK(line.deviation_mm == Approx(height + arc).epsilon(1e-3));
    const double pieces = std::ceil(static_cast<double>(build.nodes.size() - 1) / wanted);
    CHECK(line.nodes() == static_cast<std::size_t>(pieces) + 1);
  }
}

TEST_CASE("no node that is left out lies farther away than the tolerance") {
  const SceneSource source = small_source(1.0, 60.0);
  const NodePlaces places(source.build());
  for (const double tolerance : {0.02, 0.1, 0.5}) {
    const ThinnedLine line = thin_line(source.build(), places, {}, tolerance);
    const double farthest = farthest_node(places, line);
    CHECK(farthest <= tolerance);
    CHECK(line.deviation_mm >= farthest);
    CHECK(line.deviation_mm <= std::max(tolerance, thin_line(source.build(), places, {}, 0.0).deviation_mm));
    CHECK(line.nodes() < source.build().nodes.size());
  }
}

TEST_CASE("only the layers that are wanted are in the line") {
  const SceneSource source = small_source(1.0, 70.0);
  REQUIRE(source.build().strokes.size() >= 3);
  const ThinnedLine line = thin_line(source.build(), NodePlaces(source.build()), {2, 2}, 0.0);
  REQUIRE(line.layers.size() == 1);
  CHECK(line.layers[0].layer == 2);
  CHECK(thin_line(source.build(), NodePlaces(source.build()), {2, 999}, 0.0).layers.size() ==
        source.build().strokes.size() - 1);
}

}  // namespace laywright
