#include <cmath>

#include <catch2/catch.hpp>

#include "lay/settle.h"

using namespace laywright;

namespace {

// Fiber of d 1 on a flat barrel at r 10, between faces at 0 and 20.
Section flat(double d = 1.0) { return {d, {10.0 + 0.5 * d, 0.0}, {0.5 * d, 0.0}, {20.0 - 0.5 * d, 0.0}}; }

Section with_row(double pitch) {
  Section section = flat();
  for (double x = 0.5; x < 19.6; x += pitch) section.insert(x, 10.5, 0);
  return section;
}

Resting pulled_down(const Section& section, double x, double friction, double sideways = 0.0) {
  Resting node = set_down(section, x);
  settle(section, node, node.x + sideways, node.r - 0.01, FrictionCone(friction));
  return node;
}

}  // namespace

// Statics of a point under a pull on smooth curves: closed forms.
TEST_CASE("without friction a node slides into the valley between two turns") {
  const Section section = with_row(1.0);
  for (const double x : {5.01, 5.3, 5.6, 5.99}) {
    const Resting node = pulled_down(section, x, 0.0, 0.0);
    // One settle moves under one fixed pull; repeat as the string does.
    Resting resting = node;
    for (int i = 0; i < 400; ++i) settle(section, resting, resting.x, resting.r - 0.01, FrictionCone(0.0));
    CHECK(resting.in_valley());
    CHECK(resting.x == Approx(x < 5.5 ? 5.0 : 6.0));
    CHECK(resting.r == Approx(10.5 + std::sqrt(0.75)).epsilon(1e-12));
  }
}

TEST_CASE("a node stays where the slope is below the friction, and slides to where it equals it") {
  const Section section = with_row(1.1);
  const double mu = 0.5;
  // On a cap of radius d the slope is tan(angle from the crest): equal to mu at sin = mu / sqrt(1 + mu^2).
  const double edge = mu / std::sqrt(1.0 + mu * mu);
  const double crest = 0.5 + 5 * 1.1;
  const Resting held = pulled_down(section, crest + 0.95 * edge, mu);
  CHECK(held.x == Approx(crest + 0.95 * edge));
  Resting slid = set_down(section, crest + 1.02 * edge);
  for (int i = 0; i < 4000; ++i) settle(section, slid, slid.x, slid.r - 0.001, FrictionCone(mu));
  CHECK(slid.in_valley());
  // A pull toward the crest holds it on the steep side as soon as the two together lie within the cone.
  Resting pulled = set_down(section, crest + 1.02 * edge);
  settle(section, pulled, pulled.x - 0.001, pulled.r - 0.01, FrictionCone(mu));
  CHECK(pulled.x == Approx(crest + 1.02 * edge));
}

TEST_CASE("the pull makes the cone's angle with the normal where a sliding node stops") {
  Section section = flat();
  section.insert(10.0, 10.5, 0);
  const FrictionCone cone(0.4);
  Resting node = set_down(section, 9.9);
  settle(section, node, 10.3, 11.2, cone);
  const Normal n = normal_of(section, node.left, node.x, node.r);
  const double press = -((10.3 - node.x) * n.x + (11.2 - node.r) * n.r);
  const double along = (10.3 - node.x) * n.r - (11.2 - node.r) * n.x;
  CHECK(node.x > 9.9);
  CHECK(along == Approx(0.4 * press));
}

TEST_CASE("a node pulled out of the surface lifts, and comes down where its way meets it") {
  Section section = flat();
  section.insert(10.0, 10.5, 0);
  Resting node = set_down(section, 10.0);
  settle(section, node, 10.2, 12.0, FrictionCone(0.5));
  CHECK(node.lifted());
  CHECK(node.x == 10.2);
  CHECK(node.r == 12.0);
  settle(section, node, 10.2, 11.0, FrictionCone(Fiber::held));
  CHECK_FALSE(node.lifted());
  CHECK(node.r == Approx(10.5 + std::sqrt(1.0 - 0.04)));
  CHECK(node.left.kind == Contact::Kind::circle);
}

TEST_CASE("beside a turn on the barrel a node rests on both, and climbs when pulled over") {
  Section section = flat();
  section.insert(10.0, 10.5, 0);
  Resting node = set_down(section, 15.0);
  settle(section, node, 9.0, 10.4, FrictionCone(0.3));
  CHECK(node.x == Approx(11.0));
  CHECK(node.r == Approx(10.5));
  CHECK(node.in_valley());
  // Pulled toward a point above the crest it climbs the side and the cap.
  for (int i = 0; i < 400; ++i) settle(section, node, node.x - 0.05, node.r + 0.03, FrictionCone(0.0));
  CHECK(node.x < 10.0);
}

TEST_CASE("the flange faces hold the fiber in") {
  const Section section = flat();
  CHECK(set_down(section, -3.0).x == Approx(0.5));
  CHECK(set_down(section, 25.0).x == Approx(19.5));
  Resting node = set_down(section, 18.0);
  settle(section, node, 30.0, 10.4, FrictionCone(0.2));
  CHECK(node.x == Approx(19.5));
  CHECK(node.r == Approx(10.5));
}

TEST_CASE("a face that opens is met further out the higher the fiber lies") {
  const double slope = -0.1;  // x = 1 - 0.1 (r - 10), offset inward by d/2 already
  Section section(1.0, {10.5, 0.0}, {2.0, slope}, {18.0, -slope});
  const Resting corner = set_down(section, -2.0);
  CHECK(corner.x == Approx(2.0 + slope * 10.5));
  section.insert(corner.x, corner.r, 0);
  const Resting second = set_down(section, -2.0);
  const double distance = std::hypot(second.x - corner.x, second.r - corner.r);
  CHECK(distance == Approx(1.0));
  CHECK(second.x == Approx(2.0 + slope * second.r));
  CHECK(second.x < corner.x);
}

TEST_CASE("left and right are mirror images") {
  Section section = flat();
  Section mirrored = flat();
  for (const double x : {3.0, 4.2, 5.1, 7.9, 9.0}) {
    const Resting a = set_down(section, x);
    section.insert(a.x, a.r, 0);
    mirrored.insert(20.0 - a.x, a.r, 0);
  }
  for (double x = 2.0; x < 10.0; x += 0.07) {
    for (const double side : {-0.4, -0.02, 0.0, 0.03, 0.5}) {
      Resting a = set_down(section, x);
      Resting b = set_down(mirrored, 20.0 - x);
      settle(section, a, a.x + side, a.r - 0.1, FrictionCone(0.3));
      settle(mirrored, b, b.x - side, b.r - 0.1, FrictionCone(0.3));
      REQUIRE(a.x == Approx(20.0 - b.x).margin(1e-9));
      REQUIRE(a.r == Approx(b.r).margin(1e-9));
    }
  }
}
