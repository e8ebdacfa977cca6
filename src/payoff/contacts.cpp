#include "payoff/contacts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

constexpr double no_contact = -1.0;
// Below this cosine, within 3 degrees of square, a turn touches at the equator.
constexpr double at_equator = 0.05;

struct Flank {
  double cosine = no_contact;  // of the least lean of what carries; negative where nothing does
  bool beside = false;         // a turn touches at the equator

  [[nodiscard]] bool square() const { return cosine == no_contact ? beside : cosine < at_equator; }
};

// A turn at the equator hides what lies beneath it, which may carry. So it is taken for a wall only opposite to another.
double cosine_of(const Flank& side, const Flank& other) {
  if (side.cosine != no_contact) return side.cosine;
  return side.beside && other.square() ? 0.0 : no_contact;
}

double lean_of(double cosine) { return std::acos(std::clamp(cosine, 0.0, 1.0)); }

}  // namespace

Surroundings surroundings(const Section& section, double x_mm, double r_mm, double least_lean_rad) {
  const double near = touching_d * section.fiber_diameter(), far = section.most_reach() + near;
  Surroundings found;
  Flank left_flank, right_flank;
  section.any_near(x_mm, far, [&](std::int32_t turn) {
    const double off = section[turn].x - x_mm, dx = std::abs(off);
    const double up = r_mm - section[turn].r, keeps = section.reach(turn), touches = keeps + near;
    if (up < -near && dx < keeps - near) found.under = true;
    if (up < -near || dx * dx + up * up > touches * touches) return false;
    Flank& side = off > 0.0 ? right_flank : left_flank;
    const double cosine = up * section.per_reach(turn);
    if (cosine < at_equator) {
      side.beside = true;
    } else {
      side.cosine = std::max(side.cosine, cosine);
    }
    return false;
  });
  // The normal of a face that opens outward leans less than square.
  const auto face = [&](const FaceLine& line, double inward, Flank& side) {
    if (inward * (x_mm - line.at_axis - line.slope * r_mm) < near)
      side.cosine = std::max(side.cosine, std::max(0.0, -inward * line.slope));
  };
  face(section.left(), 1.0, left_flank);
  face(section.right(), -1.0, right_flank);
  const double left = cosine_of(left_flank, right_flank), right = cosine_of(right_flank, left_flank);
  if (left == no_contact || right == no_contact) return found;
  // No lean is more than square, so that a flat contact settles it for both.
  if (std::max(left, right) > std::cos(std::max(0.0, 2.0 * least_lean_rad - 0.5 * std::numbers::pi))) return found;
  if (r_mm - section.barrel().at_zero - section.barrel().slope * x_mm < near) return found;
  const double lean = 0.5 * (lean_of(left) + lean_of(right));
  if (lean >= least_lean_rad) found.lean_rad = lean;
  return found;
}

}  // namespace laywright
