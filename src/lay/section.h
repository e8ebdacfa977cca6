// The axial section at one station: barrel, flange faces, and the circles that passing turns have left there.
//
// The centre of a new turn must keep d from every centre, d/2 from the barrel and from the flange faces. Seen
// from above, the lowest allowed radius over x is the offset surface: barrel line, face lines, and a cap of
// radius d over each exposed centre, with a vertical side under it on either hand (what lies under an overhang
// cannot be reached). The section keeps the exposed centres, and only those, in rising x.
//
// Where the fiber's diameter scatters, the fiber that passes has its own (admit), and a cap's radius is the half of that
// and half of the turn's that lies there: the circle's reach.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "plan/lay_plan.h"

namespace laywright {

// A flange face, offset inward by half of the passing fiber, as a line: x = at_axis + slope * r.
struct FaceLine {
  double at_axis = 0.0;
  double slope = 0.0;

  [[nodiscard]] double at(double r) const { return at_axis + slope * r; }
};

// The barrel, offset outward by the same: r = at_zero + slope * x.
struct BarrelLine {
  double at_zero = 0.0;
  double slope = 0.0;

  [[nodiscard]] double at(double x) const { return at_zero + slope * x; }
};

class Section {
 public:
  static constexpr std::int32_t none = -1;

  struct Exposed {
    double x = 0.0, r = 0.0;
    std::int32_t before = none, after = none;  // neighbours in x
    std::uint32_t stroke = 0;                  // that laid it
    float half = 0.0F;                         // of the turn's diameter
  };

  Section() = default;
  Section(double fiber_diameter, BarrelLine barrel, FaceLine left, FaceLine right);

  // From now on fiber passes whose diameter is up to 2 half_spread more or less than the fiber's. Call it before anything
  // lies here.
  void scatter(double half_spread);

  // The fiber that passes from now on is twice this thick (mm); what lies here stays as it is. Only after scatter().
  void admit(float half);

  // The section of a plan's empty spool at angle theta (rad; the angle matters for flange run-out).
  // Where the plan's diameter scatters, it has been told so.
  [[nodiscard]] static Section of(const Plan& plan, double theta);
  // One for each station of a turn.
  [[nodiscard]] static std::vector<Section> ring(const Plan& plan, int stations);

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

  // What is asked next lies near x: a fiber that crosses comes back far from where it last lay here.
  void turn_to(double x) {
    const std::int32_t i = at_or_before(x);
    if (i != none) cursor_ = i;
  }

  // How far the centre of the passing fiber stays from that of circle i: d, where nothing scatters.
  [[nodiscard]] double reach(std::int32_t i) const { return passing_ + static_cast<double>((*this)[i].half); }
  [[nodiscard]] double per_reach(std::int32_t i) const { return even_ ? per_d_ : 1.0 / reach(i); }
  [[nodiscard]] double most_reach() const { return most_; }  // of any circle
  [[nodiscard]] bool even() const { return even_; }          // nothing scatters

  // Radius of the cap over circle i at x; precondition: |x - x_i| <= its reach.
  [[nodiscard]] double cap(std::int32_t i, double x) const;

  // Lowest allowed radius at x, flange faces left out, and the circle that gives it (none: the barrel).
  struct Height {
    double r = 0.0;
    std::int32_t circle = none;
  };
  [[nodiscard]] Height height(double x) const;

  // Asks of the exposed circles nearer to x than that, from x outward, first on its left, until one says yes. Whether one did.
  template <class Ask>
  bool any_near(double x, double nearer_than, Ask&& ask) const {
    const std::int32_t at = at_or_before(x);
    for (std::int32_t i = at; i != none && x - (*this)[i].x < nearer_than; i = (*this)[i].before) {
      if (ask(i)) return true;
    }
    for (std::int32_t i = at == none ? first_ : (*this)[at].after; i != none && (*this)[i].x - x < nearer_than;
         i = (*this)[i].after) {
      if (ask(i)) return true;
    }
    return false;
  }

  // Whether a turn is in the way of a centre at (x, r): nearer than its reach, or over it. Faces and barrel left out.
  [[nodiscard]] bool in_the_way(double x, double r) const {
    return any_near(x, most_, [&](std::int32_t i) {
      const Exposed& c = (*this)[i];
      const double keeps = reach(i);
      const double up = r - c.r;
      const double off = x - c.x;
      if (up < 0.0) return even_ || std::abs(off) < keeps;
      return up < keeps && off * off + up * up < keeps * keeps;
    });
  }

  // Has what the next landing or insertion begins with brought near from memory: a wind comes back to a station after a
  // turn, when it has left the nearest cache.
  void bring_near() const {
    if (cursor_ != none) __builtin_prefetch(&(*this)[cursor_]);
  }

  // x, or where the nearer face is at r. Above the rim, where nothing is kept, the faces may even meet: the left one counts.
  [[nodiscard]] double between_faces(double x, double r) const {
    return std::max(left_.at(r), std::min(right_.at(r), x));
  }

  // No centre lies farther from the axis.
  [[nodiscard]] double top() const { return top_; }

  [[nodiscard]] double fiber_diameter() const { return d_; }    // without its scatter
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
  [[nodiscard]] bool hidden_for_the_thinnest(std::int32_t i) const;
  [[nodiscard]] bool shows_between(std::int32_t left, std::int32_t right, const Exposed& c) const;
  Exposed& at(std::int32_t i) { return circles_[static_cast<std::size_t>(i)]; }

  double d_ = 1.0, per_d_ = 1.0;
  bool even_ = true;
  float half_ = 0.5F;         // of the passing fiber, as a circle keeps it
  double passing_ = 0.5;      // the same; with nothing scattered, what makes a reach d to the last bit
  double half_spread_ = 0.0;  // of halves, to either side
  double most_ = 1.0;         // greatest reach
  BarrelLine barrel_;
  FaceLine left_, right_;
  std::vector<Exposed> circles_;
  std::vector<std::int32_t> free_;
  std::int32_t first_ = none, last_ = none;
  std::int32_t cursor_ = none;  // the last insertion
  double top_ = 0.0;
};

}  // namespace laywright
