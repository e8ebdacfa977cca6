#include "scene/layer_numbers.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {

namespace {

// Of a stroke, the node at a station that lies nearest to x; none where the stroke does not pass it.
std::optional<std::size_t> nearest_of(const SceneSource& source, std::size_t stroke, std::size_t station, double x,
                                      std::size_t end) {
  const Build& build = source.build();
  const std::size_t stations = source.stations(), begin = build.strokes[stroke].first_node;
  const std::size_t last = std::min(build.end_of(stroke), end);
  std::optional<std::size_t> nearest;
  for (std::size_t node = begin + (station + stations - begin % stations) % stations; node < last;
       node += stations) {
    if (!nearest || std::abs(build.nodes.x(node) - x) < std::abs(build.nodes.x(*nearest) - x)) nearest = node;
  }
  return nearest;
}

}  // namespace

std::vector<LayerNumber> layer_numbers(const SceneSource& source, const View& view, double angle,
                                       bool looks_onward) {
  const VisibleFiber fiber = visible_fiber(source, view);
  std::vector<LayerNumber> numbers;
  if (fiber.first >= fiber.end) return numbers;
  const double turn = angle / (2.0 * std::numbers::pi);
  const auto stations = static_cast<double>(source.stations());
  const auto station =
      static_cast<std::size_t>(std::lround((turn - std::floor(turn)) * stations)) % source.stations();
  const double from = view.x_from_mm.value_or(0.0),
               to = view.x_to_mm.value_or(source.plan().spool().inside_width_mm);
  const double middle = 0.5 * (from + to);
  const Vec3 outward = in_space(0.0, 1.0, angle), onward{0.0, -std::sin(angle), std::cos(angle)};
  for (std::size_t stroke = source.stroke_of(fiber.first); stroke <= source.stroke_of(fiber.end - 1); ++stroke) {
    const auto node = nearest_of(source, stroke, station, middle, fiber.end);
    // A layer that has not come so far is not named in another one's place.
    if (!node || std::abs(source.build().nodes.x(*node) - middle) > 0.25 * (to - from)) continue;
    const NodeStore& nodes = source.build().nodes;
    numbers.push_back({static_cast<int>(stroke) + 1, in_space(nodes.x(*node), nodes.r(*node), angle), outward,
                       looks_onward ? onward : -onward});
  }
  return numbers;
}

}  // namespace laywright
