// The checks of a verdict, each held against its limit.
#pragma once

#include <array>
#include <compare>
#include <vector>

#include "measure/acceptance.h"
#include "verdict/verdict.h"

namespace laywright {

[[nodiscard]] std::vector<Check> weigh(const Plan& plan, const Build& build, const Measurements& measurements,
                                       const TakeupRun* run);

// Of its limit, the margin with less than which a firm figure is marginal.
inline constexpr double firm_share = 0.05;

// What must not be, whatever the draw.
[[nodiscard]] bool is_firm(Weighed what);

// What follows from how the fiber lies; all else is of spool, fiber and take-up.
[[nodiscard]] bool depends_on_lay(Weighed what);

// What grows with the tension of winding, in proportion: the pull on the fiber and the clutch's current.
[[nodiscard]] bool depends_on_tension(Weighed what);

// The strain (below) at which a check ceases to be good, so that figures of both kinds compare.
[[nodiscard]] double good_up_to(const Check& check);

// Value over limit, or limit over value where it is a least one: above 1 beyond the limit. Infinite where the limit is 0.
[[nodiscard]] double strain_of(const Check& check);

// Which of several checks decides: the greatest, by its members in their order.
struct CheckRank {
  Grade grade = Grade::good;
  bool is_firm = false, leads = false;  // of one that is not good
  double nearness = 0.0;                // its strain, to that at which it ceases to be good

  auto operator<=>(const CheckRank&) const = default;
};
[[nodiscard]] CheckRank rank_of(const Check& check, Product product);

// How much higher the surface stands at each flange than in the middle, left and right, mm; the barrel's own taper is taken off.
[[nodiscard]] std::array<double, 2> edges_over_middle_mm(const Plan& plan, const Measurements& measurements);

}  // namespace laywright
