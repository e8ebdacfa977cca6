// The axial section at one station: barrel, flange faces, and the circles that passing turns have left there.
//
// The centre of a new turn must keep d from every centre, d/2 from the barrel and from the flange faces. Seen
// from above, the lowest allowed radius over x is the offset surface: barrel line, face lines, and a cap of
// radius d over each exposed centre, with a vertical side under it on either hand (what lies under an overhang
// cannot be reached). The section keeps the exposed centres, and only those, in rising x.
#pragma once

#include <cstdint>
#include <vector>

#include "plan/lay_plan.h"

namespace laywright {

// A flange face, offset inward by d/2, as a line: x = at_axis + slope * r.
struct FaceLine {
  double at_axis = 0.0;
  double slope = 0.0;
};

// The barrel, offset outward by d/2: r = at_zero + slope * x.
struct BarrelLine {
  double at_zero = 0.0;
  double slope = 0.0;
};

class Section {
 public:
  static constexpr std::int32_t none = -1;

  struct Exposed {
    double x = 0.0, r = 0.0;
    std::int32_t before = none, after = none;  // neighbours in x
    std::uint32_t stroke = 0;                  // that laid it
  };

  Section() = default;
  Section(double fiber_diameter, BarrelLine barrel, FaceLine left, FaceLine right);

  // The section of a plan's empty spool at angle theta (rad; the angle matters for flange run-out).
  [[nodiscard]] static Section of(const Plan& plan, double theta);

  // Adds a circle. Precondition: it keeps its distance from all that is there (no lower than the offset surface).
  void insert(double x, double r, std::uint32_t stroke);

  // The last exposed circle at or left of x, or none. Fast when x is near the last insertion.
  [[nodiscard]] std::int32_t at_or_before(double x) const {
    std::int32_t i = cursor_;
    if (i == none) return none;
    while (i != none && (*this)[i].x > x) i = (*this)[i].before;
    if (i == none) return none;
    for (std::int32_t next = (*this)[i].after; next != none && (*this)[next].x <= x; next = (*this)[i].after)
      i = next;
    return i;
  }

  // Radius of the cap over circle i at x; precondition: |x - x_i| <= d.
  [[nodiscard]] double cap(std::int32_t i, double x) const;

  // Lowest allowed radius at x, flange faces left out, and the circle that gives it (none: the barrel).
  struct Height {
    double r = 0.0;
    std::int32_t circle = none;
  };
  [[nodiscard]] Height height(double x) const;

  // Whether a turn is in the way of a centre at (x, r): nearer than d, or over it. Faces and barrel left out.
  [[nodiscard]] bool in_the_way(double x, double r) const {
    const auto meets = [&](const Exposed& c) {
      const double up = r - c.r;
      return up < d_ && (up < 0.0 || (x - c.x) * (x - c.x) + up * up < d_ * d_);
    };
    const std::int32_t at = at_or_before(x);
    for (std::int32_t i = at; i != none && x - (*this)[i].x < d_; i = (*this)[i].before) {
      if (meets((*this)[i])) return true;
    }
    for (std::int32_t i = at == none ? first_ : (*this)[at].after; i != none && (*this)[i].x - x < d_;
         i = (*this)[i].after) {
      if (meets((*this)[i])) return true;
    }
    return false;
  }

  // Has what the next landing or insertion begins with brought near from memory: a wind comes back to a station after a
  // turn, when it has left the nearest cache.
  void bring_near() const {
    if (cursor_ != none) __builtin_prefetch(&(*this)[cursor_]);
  }

  // No centre lies farther from the axis.
  [[nodiscard]] double top() const { return top_; }

  [[nodiscard]] double fiber_diameter() const { return d_; }
  [[nodiscard]] double per_diameter() const { return per_d_; }  // 1 / fiber_diameter()
  [[nodiscard]] const BarrelLine& barrel() const { return barrel_; }
  [[nodiscard]] const FaceLine& left() const { return left_; }
  [[nodiscard]] const FaceLine& right() const { return right_; }
  [[nodiscard]] const Exposed& operator[](std::int32_t i) const { return circles_[static_cast<std::size_t>(i)]; }
  [[nodiscard]] std::int32_t first() const { return first_; }
  [[nodiscard]] std::int32_t last() const { return last_; }

 private:
  void unlink(std::int32_t i);
  [[nodiscard]] bool hidden(std::int32_t i) const;
  Exposed& at(std::int32_t i) { return circles_[static_cast<std::size_t>(i)]; }

  double d_ = 1.0, per_d_ = 1.0;
  BarrelLine barrel_;
  FaceLine left_, right_;
  std::vector<Exposed> circles_;
  std::vector<std::int32_t> free_;
  std::int32_t first_ = none, last_ = none;
  std::int32_t cursor_ = none;  // the last insertion
  double top_ = 0.0;
};

}  // namespace laywright
