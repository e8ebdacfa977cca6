#include "payoff/way_out.h"

#include <algorithm>
#include <cmath>

namespace laywright {
namespace {

// Toward the right end; the left one is its mirror.
struct Walk {
  const Section& section;
  Side end;

  [[nodiscard]] double ahead(double x_mm) const { return end == Side::right ? x_mm : -x_mm; }
  [[nodiscard]] std::int32_t first_beyond(double x_mm) const {
    std::int32_t i = section.at_or_before(x_mm);
    if (end == Side::right) {
      i = i == Section::none ? section.first() : section[i].after;
      while (i != Section::none && section[i].x <= x_mm) i = section[i].after;
    } else {
      while (i != Section::none && section[i].x >= x_mm) i = section[i].before;
    }
    return i;
  }
  [[nodiscard]] std::int32_t next(std::int32_t i) const {
    return end == Side::right ? section[i].after : section[i].before;
  }
};

struct Step {
  std::int32_t turn = Section::none;  // the next that the line touches; none: it comes to the rim
  double angle = 0.0;                 // of the line
};

// From a place, or from the crown of a turn's cap (`cap`: its reach), the steepest line that touches something ahead.
Step steepest(const Walk& walk, std::int32_t from, double x_mm, double r_mm, double cap, double rim_x,
              double rim_r) {
  const double most = walk.section.most_reach();
  const double to_rim = std::max(walk.ahead(rim_x) - walk.ahead(x_mm), 1e-9), up = rim_r - r_mm;
  const double far = std::hypot(to_rim, up);
  // A tangent from a cap to a point, and from a point to a cap, mirror each other.
  Step best{Section::none, std::atan2(up, to_rim) - std::asin(std::min(1.0, cap / far))};
  const double higher = std::max(0.0, walk.section.top() - r_mm);
  for (std::int32_t i = from; i != Section::none; i = walk.next(i)) {
    const double dx = walk.ahead(walk.section[i].x) - walk.ahead(x_mm), dr = walk.section[i].r - r_mm;
    if (dx <= 0.0) continue;
    if (dx >= to_rim) break;
    // Whatever stands from here on is too low, or too far.
    if (std::atan2(higher, dx) + std::asin(std::min(1.0, (most - cap) / dx)) <= best.angle) break;
    const double more = walk.section.reach(i) - cap;
    const double angle = std::atan2(dr, dx) + std::asin(std::clamp(more / std::hypot(dx, dr), -1.0, 1.0));
    if (angle > best.angle) best = {i, angle};
  }
  return best;
}

}  // namespace

double bend_over_end(const Section& section, Side end, double rim_mm, double x_mm, double r_mm) {
  const Walk walk{section, end};
  const FaceLine& face = end == Side::right ? section.right() : section.left();
  const double rim_x = face.at_axis + face.slope * rim_mm;
  Step step = steepest(walk, walk.first_beyond(x_mm), x_mm, r_mm, 0.0, rim_x, rim_mm);
  const double leaves = step.angle;
  while (step.turn != Section::none) {
    const Section::Exposed& turn = section[step.turn];
    const Step next = steepest(walk, walk.next(step.turn), turn.x, turn.r, section.reach(step.turn), rim_x, rim_mm);
    step = {next.turn, std::min(step.angle, next.angle)};
  }
  return leaves - step.angle;
}

}  // namespace laywright
