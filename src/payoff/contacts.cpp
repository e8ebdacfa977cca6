#include "payoff/contacts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

// Of the contacts on one side, the cosine of the least lean; negative where there is none.
constexpr double no_contact = -1.0;

double lean_of(double cosine) { return std::acos(std::clamp(cosine, 0.0, 1.0)); }

}  // namespace

Surroundings surroundings(const Section& section, double x_mm, double r_mm, double least_lean_rad) {
  const double d = section.fiber_diameter(), near = touching_d * d, reach = (d + near) * (d + near);
  Surroundings found;
  double left = no_contact, right = no_contact;
  const auto meet = [&](const Section::Exposed& turn, double dx, double& side) {
    const double up = r_mm - turn.r;
    if (up < -near && dx < d - near) found.under = true;
    if (up < -near || dx * dx + up * up > reach) return;
    side = std::max(side, std::max(0.0, up) * section.per_diameter());
  };
  const std::int32_t at = section.at_or_before(x_mm);
  for (std::int32_t i = at; i != Section::none && x_mm - section[i].x < d + near; i = section[i].before)
    meet(section[i], x_mm - section[i].x, left);
  for (std::int32_t i = at == Section::none ? section.first() : section[at].after;
       i != Section::none && section[i].x - x_mm < d + near; i = section[i].after) {
    meet(section[i], section[i].x - x_mm, right);
  }
  // The normal of a face that opens outward leans less than square.
  const auto face = [&](const FaceLine& line, double inward, double& side) {
    if (inward * (x_mm - line.at_axis - line.slope * r_mm) < near)
      side = std::max(side, std::max(0.0, -inward * line.slope));
  };
  face(section.left(), 1.0, left);
  face(section.right(), -1.0, right);
  if (left == no_contact || right == no_contact) return found;
  // No lean is more than square, so that a flat contact settles it for both.
  if (std::max(left, right) > std::cos(std::max(0.0, 2.0 * least_lean_rad - 0.5 * std::numbers::pi))) return found;
  if (r_mm - section.barrel().at_zero - section.barrel().slope * x_mm < near) return found;
  const double lean = 0.5 * (lean_of(left) + lean_of(right));
  if (lean >= least_lean_rad) found.lean_rad = lean;
  return found;
}

}  // namespace laywright
