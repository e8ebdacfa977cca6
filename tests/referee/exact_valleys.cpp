// Two-point supports against CGAL's exact circles: a node that rests between two circles of radius d lies on their
// intersection, and on nothing else.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>
#include <vector>

#include <CGAL/Exact_circular_kernel_2.h>
#include <catch2/catch.hpp>

#include "dropped_discs.h"
#include "lay/penetration_checker.h"
#include "lay/random_plans.h"

using namespace laywright;
using referee::Centre;

namespace {

using Kernel = CGAL::Exact_circular_kernel_2;
using Arc_point = Kernel::Circular_arc_point_2;
using Meeting = CGAL::CK2_Intersection_traits<Kernel, Kernel::Circle_2, Kernel::Circle_2>::type;
using Crossing = CGAL::CK2_Intersection_traits<Kernel, Kernel::Line_2, Kernel::Circle_2>::type;

Kernel::Circle_2 exact_circle(const Centre& centre, double radius) {
  const Kernel::FT r(radius);
  return {Kernel::Point_2(centre.x, centre.r), r * r};
}

template <class Found>
std::vector<Centre> points_of(const std::vector<Found>& found) {
  std::vector<Centre> points;
  for (const Found& one : found) {
    const auto* point = boost::get<std::pair<Arc_point, unsigned>>(&one);
    REQUIRE(point != nullptr);  // two circles that are one and the same have no valley
    points.push_back({CGAL::to_double(point->first.x()), CGAL::to_double(point->first.y()), 0});
  }
  return points;
}

// Where the circles of radius d about two centres meet, exactly, then rounded once.
std::vector<Centre> valleys(const Centre& a, const Centre& b, double d) {
  std::vector<Meeting> found;
  CGAL::intersection(exact_circle(a, d), exact_circle(b, d), std::back_inserter(found));
  return points_of(found);
}

double distance(const Centre& a, const Centre& b) { return std::hypot(a.x - b.x, a.r - b.r); }

// How far rounding of the centres moves the valley: it grows where the two are nearly 2 d apart.
double condition(const Centre& a, const Centre& b, double d) {
  const double half = 0.5 * distance(a, b);
  return d / std::sqrt(std::max(1e-12 * d * d, d * d - half * half));
}

}  // namespace

TEST_CASE("discs that roll to rest lie in exact valleys") {
  for (const double d : {1.0, 0.1, 3.0}) {
    const double width = 30.0 * d;
    Section section = referee::box(width, d);
    const auto discs = referee::rain(section, width, 400, 7, referee::drop_and_roll);
    int compared = 0;
    for (const referee::Disc& disc : discs) {
      if (disc.between.empty()) continue;
      const Centre& a = disc.between[0];
      const Centre& b = disc.between[1];
      const auto exact = valleys(a, b, d);
      REQUIRE_FALSE(exact.empty());
      const Centre& upper = exact.front().r > exact.back().r ? exact.front() : exact.back();
      INFO("disc at " << disc.x << ", " << disc.r << " between " << a.x << ", " << a.r << " and " << b.x << ", "
                      << b.r);
      const double off = distance({disc.x, disc.r, 0}, upper) / (d * condition(a, b, d));
      CHECK(off * 1e12 < 1.0);
      // It rests: one support on either hand.
      CHECK(std::min(a.x, b.x) < disc.x);
      CHECK(std::max(a.x, b.x) > disc.x);
      ++compared;
    }
    CHECK(compared > 250);
  }
}

TEST_CASE("discs beside a disc on a sloping floor lie where circle and floor meet") {
  constexpr double d = 1.0;
  for (const double slope : {-0.2, -0.01, 0.0, 0.03, 0.3}) {
    const BarrelLine floor{0.5 * d * std::hypot(1.0, slope), slope};
    Section section(d, floor, FaceLine{-50.0, 0.0}, FaceLine{50.0, 0.0});
    const Centre first{0.25, floor.at_zero + slope * 0.25, 0};
    section.insert(first.x, first.r, 0);
    for (const double side : {-1.0, 1.0}) {
      if (side * slope < 0.0) continue;  // it would roll away downhill
      Resting rest = set_down(section, first.x + side * 0.3);
      settle(section, rest, rest.x, rest.r - 1e6, FrictionCone(0.0));
      const Kernel::FT s(slope);
      const Kernel::Line_2 line(s, Kernel::FT(-1), Kernel::FT(floor.at_zero));
      std::vector<Crossing> found;
      CGAL::intersection(line, exact_circle(first, d), std::back_inserter(found));
      const auto points = points_of(found);
      REQUIRE(points.size() == 2);
      const Centre exact = (points[0].x - points[1].x) * side > 0.0 ? points[0] : points[1];
      INFO("slope " << slope << " side " << side << ": " << rest.x << ", " << rest.r << " not " << exact.x << ", "
                    << exact.r);
      CHECK(distance({rest.x, rest.r, 0}, exact) * 1e12 < d);
    }
  }
}

TEST_CASE("nodes of a build that lie between two turns lie in exact valleys") {
  PlanDraft draft = random_plans::draft(12, {false, false, false, 150.0});
  draft.fiber.friction = 0.3;
  const double d = draft.fiber.diameter_mm;
  draft.traverse.pitch_mm = 1.05 * d;
  draft.wind = {};
  draft.wind.turns = 150.0;
  const Build build = random_plans::laid(random_plans::plan_of(draft));
  int compared = 0;
  for (int station = 0; station < build.stations_per_turn; station += 7) {
    const auto centres = referee::centres_at(build, station);
    for (std::size_t turn = 2; turn < centres.size(); ++turn) {
      const Centre& node = centres[turn];
      if (build.nodes.support(node.node) != Support::valley) continue;
      std::vector<Centre> touched;
      for (std::size_t below = 0; below < turn; ++below) {
        const Centre& c = centres[below];
        if (c.r < node.r && distance(c, node) < d * (1.0 + 1e-7)) touched.push_back(c);
      }
      if (touched.size() != 2) continue;  // a turn and barrel or flange, or three at once
      const auto exact = valleys(touched[0], touched[1], d);
      double nearest = 1e9;
      for (const Centre& valley : exact) nearest = std::min(nearest, distance(valley, node));
      // Stored on a grid, one step up.
      const double off = nearest / (d * condition(touched[0], touched[1], d));
      CHECK(off * 1e7 < 1.0);
      ++compared;
    }
  }
  CHECK(compared > 300);
}
