// The unrolled map: what stands on it, and the lines of crossings against the layer table.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "export/crossings.h"
#include "export/map_sheet.h"
#include "measure/synthetic_build.h"
#include "paper/cairo_sink.h"
#include "render/laid_scene.h"

namespace laywright {
namespace {

template <class Part>
std::vector<Part> parts_of(const Drawing& drawing) {
  std::vector<Part> parts;
  for (const Drawing::Item& item : drawing.items) {
    if (const auto* part = std::get_if<Part>(&item)) parts.push_back(*part);
  }
  return parts;
}

bool says(const Drawing& drawing, const std::string& words) {
  const std::vector<Text> texts = parts_of<Text>(drawing);
  return std::any_of(texts.begin(), texts.end(),
                     [&](const Text& text) { return text.words.find(words) != std::string::npos; });
}

// Two helices of one pitch and opposite hand on one width.
Build crossing_helices(const Plan& plan, double turns) {
  constexpr double pitch = 1.5;
  return synthetic::BuildMaker(plan, 64)
      .stroke(1, turns,
              [](double turn) {
                return synthetic::Place{0.5 + pitch * turn, 50.5, Support::barrel};
              })
      .stroke(-1, turns,
              [turns](double turn) {
                return synthetic::Place{0.5 + pitch * (turns - turn), 51.5, Support::turn};
              })
      .finish();
}

}  // namespace

TEST_CASE("a layer of the other hand crosses two turns of the one below per turn, on two lines around the spool") {
  // Seen in one layer's own screw motion, the other runs back by two pitches per turn: elementary geometry, from memory.
  const Plan plan = synthetic::plan_of(synthetic::draft());
  constexpr double turns = 12.0;
  const Build build = crossing_helices(plan, turns);
  const std::vector<std::size_t> crossings = crossings_of(build, 1, build.nodes.size());
  CHECK(std::abs(static_cast<double>(crossings.size()) - 2.0 * turns) <= 2.0);
  CHECK(crossings_of(build, 0, build.end_of(0)).empty());
  // They stand at the same two angles turn after turn, but for the rounding to a station.
  const CrossingLines lines = crossing_lines(build, crossings);
  std::vector<std::size_t> long_lines;
  for (const auto& line : lines) {
    if (line.size() >= 10) long_lines.push_back(line.size());
    for (const std::size_t node : line)
      CHECK(std::abs(std::remainder(static_cast<double>(node) - static_cast<double>(line.front()), 64.0)) <= 1.0);
  }
  CHECK(long_lines.size() == 2);
}

TEST_CASE("the lines hold as many crossings as the layer table counts") {
  const SceneSource source = small_source(1.0, 60.0);
  for (std::size_t stroke = 1; stroke < source.build().strokes.size(); ++stroke) {
    const auto crossings = crossings_of(source.build(), stroke, source.build().end_of(stroke));
    CHECK(static_cast<int>(crossings.size()) == source.measurements().layers[stroke].crossings);
    std::size_t on_lines = 0;
    for (const auto& line : crossing_lines(source.build(), crossings)) on_lines += line.size();
    CHECK(on_lines == crossings.size());
  }
}

TEST_CASE("a map shows the surface in its frame, and says what it shows") {
  const SceneSource source = small_source();
  View view;
  view.colouring = Colouring::height;
  const Drawing map = draw_map_sheet(source, view);
  const std::vector<Bitmap> bitmaps = parts_of<Bitmap>(map);
  REQUIRE(bitmaps.size() == 1);
  const Bitmap& bitmap = bitmaps.front();
  CHECK(bitmap.pixels.size() == std::size_t{4} * static_cast<std::size_t>(bitmap.width * bitmap.height));
  // Angle 0 is at both ends.
  const auto row = static_cast<std::ptrdiff_t>(4 * bitmap.width);
  CHECK(std::equal(bitmap.pixels.begin(), bitmap.pixels.begin() + row, bitmap.pixels.end() - row));
  CHECK(says(map, "The surface unrolled"));
  CHECK(says(map, "Height over the middle"));
  CHECK(says(map, "from the left flange, mm"));
  CHECK(says(map, "360"));
  CHECK(bitmap.box.left > 0.0);
  CHECK(bitmap.box.right() < map.width_mm);
  CHECK(to_svg(map).find("<image") != std::string::npos);
}

TEST_CASE("a map of one layer shows that layer, in inches when asked") {
  const SceneSource source = small_source();
  View view;
  view.first_layer = 2;
  view.last_layer = 2;
  view.colouring = Colouring::gap;
  view.units = Units::inch;
  const Drawing map = draw_map_sheet(source, view);
  CHECK(says(map, "Layer 2 unrolled"));
  CHECK(says(map, "Gap beside the turn"));
  CHECK(says(map, "in fiber diameters"));
  CHECK(says(map, "from the left flange, in"));
}

}  // namespace laywright
