// How one node of the fiber comes to rest in a station's section under a given pull, with Coulomb friction.
#pragma once

#include <cmath>

#include "lay/section.h"

namespace laywright {

// What a node touches. A side is the vertical flank under a cap: the left or the right one of its circle.
struct Contact {
  enum class Kind : std::uint8_t { none, circle, left_side, right_side, barrel, left_face, right_face };
  Kind kind = Kind::none;
  std::int32_t circle = Section::none;

  friend bool operator==(const Contact&, const Contact&) = default;
};

// A node's centre, and what it touches on either hand. One contact: both are the same. In a valley they differ.
struct Resting {
  double x = 0.0, r = 0.0;
  Contact left, right;

  [[nodiscard]] bool lifted() const { return left.kind == Contact::Kind::none; }
  [[nodiscard]] bool in_valley() const { return left != right; }
};

// A coefficient of friction (0 or more; infinity: never slides), and the sine and cosine of its cone's half angle.
struct FrictionCone {
  double mu, sine, cosine;
  explicit FrictionCone(double friction)
      : mu(friction),
        sine(std::isinf(friction) ? 1.0 : friction / std::sqrt(1.0 + friction * friction)),
        cosine(std::isinf(friction) ? 0.0 : 1.0 / std::sqrt(1.0 + friction * friction)) {}
};

// Unit normal of a contact, out of the obstacle.
struct Normal {
  double x = 0.0, r = 1.0;
};
[[nodiscard]] Normal normal_of_line(const Section& section, Contact::Kind kind);  // of what is no cap
[[nodiscard]] inline Normal normal_of(const Section& section, const Contact& contact, double x, double r) {
  if (contact.kind != Contact::Kind::circle) return normal_of_line(section, contact.kind);
  const Section::Exposed& circle = section[contact.circle];
  const double per_reach = section.per_reach(contact.circle);
  return {(x - circle.x) * per_reach, (r - circle.r) * per_reach};
}

// The node set down from above at x (moved between the flange faces if it lies outside them).
[[nodiscard]] Resting set_down(const Section& section, double x);

// Moves a node that is pulled toward (x, r) with a force in proportion to its distance from there, the same in both
// directions, until friction holds it: it stays where the pull lies within the friction cone of what carries it,
// otherwise it slides along the offset surface until it does, or rests in a valley, or lifts off. Where nothing is in
// the way it goes to (x, r) itself.
void settle(const Section& section, Resting& node, double x, double r, const FrictionCone& friction);

}  // namespace laywright
