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

// The steepest line from a place to the rim or to the cap of a turn on the way.
double leaving(const Walk& walk, double x_mm, double r_mm, double rim_x, double rim_r) {
  const double most = walk.section.most_reach();
  const double to_rim = std::max(walk.ahead(rim_x) - walk.ahead(x_mm), 1e-9);
  const double higher = std::max(0.0, walk.section.top() - r_mm);
  double best = std::atan2(rim_r - r_mm, to_rim);
  for (std::int32_t i = walk.first_beyond(x_mm); i != Section::none; i = walk.next(i)) {
    const double dx = walk.ahead(walk.section[i].x) - walk.ahead(x_mm), dr = walk.section[i].r - r_mm;
    if (dx >= to_rim) break;
    // Whatever stands from here on is too low, or too far.
    if (std::atan2(higher, dx) + std::asin(std::min(1.0, most / dx)) <= best) break;
    best = std::max(best, std::atan2(dr, dx) + std::asin(std::min(1.0, walk.section.reach(i) / std::hypot(dx, dr))));
  }
  return best;
}

// The flattest line to the rim, from that place or from the cap of a turn on the way: the last of the way, since a taut fiber's
// way is convex.
double coming_to_rim(const Walk& walk, double x_mm, double r_mm, double rim_x, double rim_r) {
  double best = std::atan2(rim_r - r_mm, std::max(walk.ahead(rim_x) - walk.ahead(x_mm), 1e-9));
  for (std::int32_t i = walk.first_beyond(x_mm); i != Section::none; i = walk.next(i)) {
    const double dx = walk.ahead(rim_x) - walk.ahead(walk.section[i].x), dr = rim_r - walk.section[i].r;
    if (dx <= 0.0) break;
    const double reach = walk.section.reach(i);
    const double angle = std::atan2(dr, dx) - std::asin(std::min(1.0, reach / std::hypot(dx, dr)));
    // Where it touches the cap. A cap may begin behind the place: that part of it is not on the way.
    if (walk.ahead(walk.section[i].x) - reach * std::sin(angle) > walk.ahead(x_mm)) best = std::min(best, angle);
  }
  return best;
}

}  // namespace

double bend_over_end(const Section& section, Side end, double rim_mm, double x_mm, double r_mm) {
  const Walk walk{section, end};
  const FaceLine& face = end == Side::right ? section.right() : section.left();
  const double rim_x = face.at(rim_mm);
  const double leaves = leaving(walk, x_mm, r_mm, rim_x, rim_mm);
  return leaves - std::min(leaves, coming_to_rim(walk, x_mm, r_mm, rim_x, rim_mm));
}

}  // namespace laywright
