#include "export/thinned_line.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>

namespace laywright {

namespace {

double square(const Vec3& v) { return glm::dot(v, v); }

// Square of the distance of a place from a piece of line.
double distance_squared(const Vec3& place, const Vec3& from, const Vec3& along, double along_squared) {
  const Vec3 off = place - from;
  if (along_squared <= 0.0) return square(off);
  const double share = std::clamp(glm::dot(off, along) / along_squared, 0.0, 1.0);
  return square(off - share * along);
}

class Thinner {
 public:
  Thinner(const NodePlaces& places, double most_mm)
      : places_(places), most_squared_(most_mm * most_mm), most_skipped_(most_mm > 0.0 ? most_at_once : 1) {}

  // From a node that is kept to the last: each piece is made as long as it can be.
  std::vector<std::uint32_t> thin(std::size_t first, std::size_t last) {
    std::vector<std::uint32_t> kept{static_cast<std::uint32_t>(first)};
    skipped_.clear();
    Vec3 from = places_.at(first);
    for (std::size_t next = first + 1; next <= last; ++next) {
      const Vec3 place = places_.at(next);
      if (!skipped_.empty() && (skipped_.size() >= most_skipped_ || !fits(from, place))) {
        kept.push_back(static_cast<std::uint32_t>(next - 1));
        from = skipped_.back();
        skipped_.clear();
        greatest_squared_ = std::max(greatest_squared_, piece_squared_);
        piece_squared_ = 0.0;
      }
      skipped_.push_back(place);
    }
    kept.push_back(static_cast<std::uint32_t>(last));
    greatest_squared_ = std::max(greatest_squared_, piece_squared_);
    piece_squared_ = 0.0;
    return kept;
  }

  [[nodiscard]] double greatest() const { return std::sqrt(greatest_squared_); }

 private:
  // A bound on the cost of a tolerance that nearly everything fits.
  static constexpr std::size_t most_at_once = 64;

  // Whether all that lie between fit a straight line to this place.
  bool fits(const Vec3& from, const Vec3& to) {
    const Vec3 along = to - from;
    const double along_squared = square(along);
    double farthest = 0.0;
    for (const Vec3& place : skipped_) {
      farthest = std::max(farthest, distance_squared(place, from, along, along_squared));
      if (farthest > most_squared_) return false;
    }
    piece_squared_ = farthest;
    return true;
  }

  const NodePlaces& places_;
  double most_squared_;
  std::size_t most_skipped_;
  double greatest_squared_ = 0.0, piece_squared_ = 0.0;
  std::vector<Vec3> skipped_;
};

// Height of the arc over the straight line from station to station, at the outermost node.
double arc_height(const Build& build, std::size_t first, std::size_t end) {
  double greatest = 0.0;
  for (std::size_t node = first; node < end; ++node) greatest = std::max(greatest, build.nodes.r(node));
  return greatest * (1.0 - std::cos(std::numbers::pi / build.stations_per_turn));
}

}  // namespace

NodePlaces::NodePlaces(const Build& build) : build_(&build) {
  direction_.reserve(static_cast<std::size_t>(build.stations_per_turn));
  for (int station = 0; station < build.stations_per_turn; ++station) {
    const double angle = 2.0 * std::numbers::pi * station / build.stations_per_turn;
    direction_.push_back({std::cos(angle), std::sin(angle)});
  }
}

std::size_t ThinnedLine::nodes() const {
  std::size_t count = 0;
  for (const ThinnedLayer& layer : layers) count += layer.nodes.size();
  return count;
}

ThinnedLine thin_line(const Build& build, const NodePlaces& places, const LayerRange& range, double tolerance_mm) {
  const std::size_t strokes = build.strokes.size();
  const auto begin = static_cast<std::size_t>(range.first - 1);
  const std::size_t end = range.last ? std::min(strokes, static_cast<std::size_t>(*range.last)) : strokes;
  const double arc = arc_height(build, build.strokes[begin].first_node, build.end_of(end - 1));
  Thinner thinner(places, std::max(0.0, tolerance_mm - arc));
  ThinnedLine line;
  for (std::size_t stroke = begin; stroke < end; ++stroke) {
    const std::size_t first = build.strokes[stroke].first_node;
    const std::size_t last = std::min(build.end_of(stroke), build.nodes.size() - 1);
    if (last > first) line.layers.push_back({stroke + 1, thinner.thin(first, last)});
  }
  line.deviation_mm = thinner.greatest() + arc;
  return line;
}

}  // namespace laywright
