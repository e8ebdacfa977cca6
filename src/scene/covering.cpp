#include "scene/covering.h"

#include <cmath>
#include <numbers>

namespace laywright {

namespace {

std::optional<std::size_t> first_over(const SceneSource& source, std::size_t station, double x_mm, std::size_t begin,
                                      std::size_t end, bool forward) {
  std::optional<std::size_t> found;
  if (begin >= end) return found;
  const double radius = 0.5 * source.d();
  const std::size_t stations = source.stations();
  const TurnExtent window{x_mm - radius, x_mm + radius, 0.0, HUGE_VAL};
  source.turns().for_each(window, begin / stations, (end - 1) / stations + 1, forward, [&](std::size_t turn) {
    const std::size_t node = turn * stations + station;
    if (node < begin || node >= end || std::abs(source.build().nodes.x(node) - x_mm) > radius) return true;
    found = node;
    return false;
  });
  return found;
}

}  // namespace

std::size_t nearest_station(const SceneSource& source, double angle) {
  const double turn = angle / (2.0 * std::numbers::pi);
  const double share = turn - std::floor(turn);
  return static_cast<std::size_t>(std::lround(share * static_cast<double>(source.stations()))) % source.stations();
}

std::optional<std::size_t> newest_over(const SceneSource& source, std::size_t station, double x_mm,
                                       std::size_t begin, std::size_t end) {
  return first_over(source, station, x_mm, begin, end, false);
}

std::optional<std::size_t> oldest_over(const SceneSource& source, std::size_t station, double x_mm,
                                       std::size_t begin, std::size_t end) {
  return first_over(source, station, x_mm, begin, end, true);
}

}  // namespace laywright
