// The way over the end against a hull of points: all caps drawn as many points, and the convex hull over them.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

#include "lay/plans.h"
#include "payoff/way_out.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

struct Point {
  double x, r;
};

double bend_by_hull(const Section& section, Side end, double rim_mm, double x, double r) {
  const double sign = end == Side::right ? 1.0 : -1.0, d = section.fiber_diameter();
  const FaceLine& face = end == Side::right ? section.right() : section.left();
  const Point rim{sign * (face.at_axis + face.slope * rim_mm), rim_mm};
  std::vector<Point> points;
  for (std::int32_t i = section.first(); i != Section::none; i = section[i].after) {
    for (int step = 0; step <= 20000; ++step) {
      const double angle = std::numbers::pi * step / 20000.0;
      const Point point{sign * section[i].x + d * std::cos(angle), section[i].r + d * std::sin(angle)};
      if (point.x > sign * x && point.x < rim.x) points.push_back(point);
    }
  }
  points.push_back(rim);
  std::sort(points.begin(), points.end(), [](const Point& a, const Point& b) { return a.x < b.x; });
  std::vector<Point> hull{{sign * x, r}};
  for (const Point& next : points) {
    while (hull.size() >= 2) {
      const Point &a = hull[hull.size() - 2], &b = hull.back();
      if ((b.x - a.x) * (next.r - a.r) - (b.r - a.r) * (next.x - a.x) < 0.0) break;
      hull.pop_back();
    }
    hull.push_back(next);
  }
  const auto angle = [](const Point& a, const Point& b) { return std::atan2(b.r - a.r, b.x - a.x); };
  return angle(hull[0], hull[1]) - angle(hull[hull.size() - 2], hull.back());
}

}  // namespace

TEST_CASE("a turn beside another at its height bends by asin(d/p) less what the rim takes off") {
  // Rim far off and as high as the caps' crowns: the way from the crown on is level.
  const Plan plan = sound(mini_spool());
  for (const double pitch : {1.0, 1.04, 1.5, 1.9}) {
    Section section = Section::of(plan, 0.0);
    section.insert(5.0, 50.5, 0);
    CHECK(bend_over_end(section, Side::left, 51.5, 5.0 + pitch, 50.5) ==
          Approx(std::asin(1.0 / pitch)).epsilon(1e-9));
    // Nothing stands on the other side.
    CHECK(bend_over_end(section, Side::right, 51.5, 5.0 + pitch, 50.5) == 0.0);
  }
}

TEST_CASE("the way over the end is the hull over what lies there") {
  const PlanDraft draft = mini_spool();
  const Plan plan = sound(draft);
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(0.5, 20.0);
  for (int trial = 0; trial < 25; ++trial) {
    Section section = Section::of(plan, 0.0);
    for (int turn = 0; turn < 12 + 3 * trial; ++turn) {
      const double x = place(random);
      section.insert(x, section.height(x).r, 0);
    }
    for (int look = 0; look < 4; ++look) {
      const double x = place(random), r = section.height(x).r;
      for (const Side end : {Side::left, Side::right}) {
        CHECK(bend_over_end(section, end, 70.0, x, r) ==
              Approx(bend_by_hull(section, end, 70.0, x, r)).margin(2e-3));
      }
    }
  }
}
