#include "takeup/turn_line.h"

#include <algorithm>
#include <cmath>

#include "measure/fiber_line.h"

namespace laywright {
namespace {

// A last part of a turn that is shorter is rounding.
constexpr double least_share = 1e-6;

std::size_t index_of(std::vector<double>::const_iterator begin, std::vector<double>::const_iterator found) {
  return static_cast<std::size_t>(found - begin);
}

}  // namespace

TurnLine::TurnLine(const Build& build) {
  const FiberLine line(build);
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const auto whole = static_cast<std::size_t>(build.turns + least_share);
  const double rest = build.turns - static_cast<double>(whole);
  const bool part = rest > least_share || whole == 0;
  const std::size_t count = whole + (part ? 1 : 0);
  if (part) last_share_ = std::max(rest, least_share);

  for (std::size_t turn = 0; turn < count; ++turn) {
    start_mm_.push_back(line.at(turn * stations));
    const std::size_t first = turn * stations, end = std::min(first + stations, build.nodes.size());
    double sum = 0.0;
    for (std::size_t k = first; k < end; ++k) sum += build.nodes.r(k);
    radius_mm_.push_back(sum / static_cast<double>(end - first));
  }
  start_mm_.push_back(build.length_mm);
  for (std::size_t stroke = 0; stroke < build.strokes.size(); ++stroke) {
    const std::size_t first = build.strokes[stroke].first_node;
    layer_start_turn_.push_back(static_cast<double>(first) / build.stations_per_turn);
    layer_end_mm_.push_back(stroke + 1 < build.strokes.size() ? line.at(build.strokes[stroke + 1].first_node)
                                                              : build.length_mm);
  }
}

std::size_t TurnLine::turn_at(double length_mm) const {
  const auto after = std::upper_bound(start_mm_.begin() + 1, start_mm_.end() - 1, length_mm);
  return index_of(start_mm_.begin() + 1, after);
}

double TurnLine::angle_at(double length_mm) const {
  const std::size_t turn = turn_at(length_mm);
  return static_cast<double>(turn) + (length_mm - start_mm_[turn]) / length_per_turn_mm(turn);
}

std::size_t TurnLine::layer_at(double length_mm) const {
  const auto found = std::lower_bound(layer_end_mm_.begin(), layer_end_mm_.end() - 1, length_mm);
  return index_of(layer_end_mm_.begin(), found);
}

}  // namespace laywright
