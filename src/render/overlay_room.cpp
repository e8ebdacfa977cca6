#include "render/overlay_room.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace laywright {
namespace {

// Shares of the line between which the box holds it; the first is greater where it does not.
std::pair<double, double> held(const OverlayLine& line, const OverlayBox& box) {
  double from = 0.0, to = 1.0;
  const glm::dvec2 way = line.to - line.from;
  for (int axis = 0; axis < 2; ++axis) {
    const double low = box.corner[axis] - line.from[axis], high = low + box.size[axis];
    if (std::abs(way[axis]) < 1e-9) {
      if (low > 0.0 || high < 0.0) return {1.0, 0.0};
      continue;
    }
    const auto [first, last] = std::minmax({low / way[axis], high / way[axis]});
    from = std::max(from, first), to = std::min(to, last);
  }
  return {from, to};
}

}  // namespace

std::vector<OverlayLine> parts_outside(const OverlayLine& line, const std::vector<OverlayBox>& boxes) {
  std::vector<std::pair<double, double>> hidden;
  for (const OverlayBox& box : boxes) {
    if (const auto share = held(line, box); share.first < share.second) hidden.push_back(share);
  }
  std::sort(hidden.begin(), hidden.end());
  hidden.emplace_back(1.0, 1.0);
  std::vector<OverlayLine> parts;
  double from = 0.0;
  const auto at = [&](double share) { return line.from + share * (line.to - line.from); };
  for (const auto& [begins, ends] : hidden) {
    if (begins > from) parts.push_back({at(from), at(begins)});
    from = std::max(from, ends);
  }
  return parts;
}

bool cross(const OverlayLine& a, const OverlayLine& b) {
  return turn_of(a.from, a.to, b.from) * turn_of(a.from, a.to, b.to) < 0.0 &&
         turn_of(b.from, b.to, a.from) * turn_of(b.from, b.to, a.to) < 0.0;
}

bool crosses(const OverlayLine& line, const OverlayBox& box) {
  if (box.holds(line.from) || box.holds(line.to)) return true;
  const glm::dvec2 far = box.corner + box.size, across(far.x, box.corner.y), down(box.corner.x, far.y);
  return cross(line, {box.corner, far}) || cross(line, {across, down});
}

bool overlap(const OverlayBox& a, const OverlayBox& b) {
  return a.corner.x < b.corner.x + b.size.x && b.corner.x < a.corner.x + a.size.x &&
         a.corner.y < b.corner.y + b.size.y && b.corner.y < a.corner.y + a.size.y;
}

bool OverlayRoom::is_crossed(const OverlayBox& box) const {
  return std::any_of(fibers.begin(), fibers.end(), [&](const OverlayLine& fiber) { return crosses(fiber, box); });
}

bool OverlayRoom::meets(const OverlayBox& box) const {
  return is_crossed(box) ||
         std::any_of(lines.begin(), lines.end(), [&](const OverlayLine& line) { return crosses(line, box); }) ||
         std::any_of(words.begin(), words.end(), [&](const OverlayBox& other) { return overlap(other, box); });
}

int OverlayRoom::signs_in(const OverlayBox& box) const {
  return static_cast<int>(std::count_if(signs.begin(), signs.end(), [&](glm::dvec2 at) { return box.holds(at); }));
}

}  // namespace laywright
