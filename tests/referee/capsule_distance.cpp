// The finished fiber in space against FCL's distance between capsules.
//
// The model keeps d between centres at each station, in the axial plane there. Between stations the fiber is taken
// as the chord from node to node. How close may two chords come? (derived)
//   In the same interval, at the same share of it, their offset is between those at the two stations, both d long or
//   longer: at least sqrt(d^2 - t^2 / 4), where t is how far the two turns move against each other from station to
//   station. The nearest points of two tilted fibers are not at the same angle: a fiber that leaves the axial plane's
//   normal by the angle s brings them nearer by the factor cos(s). s is at most the tilt of the chords plus what the
//   spool turns within the interval, taken twice for chords in neighbouring intervals.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include <fcl/geometry/shape/capsule.h>
#include <fcl/geometry/shape/sphere.h>
#include <fcl/narrowphase/distance.h>
#include <catch2/catch.hpp>

#include "lay/penetration_checker.h"
#include "lay/random_plans.h"

using namespace laywright;
using Point = fcl::Vector3<double>;

namespace {

class Line {
 public:
  explicit Line(const Build& build) : build_(build), angle_(2.0 * std::numbers::pi / build.stations_per_turn) {}

  [[nodiscard]] Point at(std::size_t node) const {
    const double theta = angle_ * static_cast<double>(node % static_cast<std::size_t>(build_.stations_per_turn));
    const double r = build_.nodes.r(node);
    return {build_.nodes.x(node), r * std::cos(theta), r * std::sin(theta)};
  }
  // Angle of the chord after a node against the direction in which the spool turns.
  [[nodiscard]] double tilt(std::size_t node) const {
    const double dx = build_.nodes.x(node + 1) - build_.nodes.x(node);
    const double dr = build_.nodes.r(node + 1) - build_.nodes.r(node);
    return std::atan2(std::hypot(dx, dr), angle_ * build_.nodes.r(node));
  }
  // How far two turns move against each other from these nodes to the next ones.
  [[nodiscard]] double relative_travel(std::size_t a, std::size_t b) const {
    const double dx = (build_.nodes.x(a + 1) - build_.nodes.x(a)) - (build_.nodes.x(b + 1) - build_.nodes.x(b));
    const double dr = (build_.nodes.r(a + 1) - build_.nodes.r(a)) - (build_.nodes.r(b + 1) - build_.nodes.r(b));
    return std::hypot(dx, dr);
  }
  [[nodiscard]] double angle() const { return angle_; }
  [[nodiscard]] const Build& build() const { return build_; }

 private:
  const Build& build_;
  double angle_;
};

fcl::Transform3<double> placed(const Point& at) {
  fcl::Transform3<double> pose = fcl::Transform3<double>::Identity();
  pose.translation() = at;
  return pose;
}

template <class Shape>
double surface_distance(const Shape& a, const fcl::Transform3<double>& pose_a, const Shape& b,
                        const fcl::Transform3<double>& pose_b) {
  fcl::DistanceRequest<double> request;
  request.gjk_solver_type = fcl::GST_LIBCCD;
  fcl::DistanceResult<double> result;
  return fcl::distance(&a, pose_a, &b, pose_b, request, result);
}

// Shapes are given half the fiber's radius: those of touching turns are d/2 apart, well clear of each other.
double distance_of_nodes(const Line& line, std::size_t a, std::size_t b) {
  const double radius = 0.25 * line.build().fiber_diameter_mm;
  const fcl::Sphere<double> sphere(radius);
  return surface_distance(sphere, placed(line.at(a)), sphere, placed(line.at(b))) + 2.0 * radius;
}

double distance_of_chords(const Line& line, std::size_t a, std::size_t b) {
  const double radius = 0.25 * line.build().fiber_diameter_mm;
  const auto capsule = [&](std::size_t node) {
    return fcl::Capsule<double>(radius, (line.at(node + 1) - line.at(node)).norm());
  };
  const auto pose = [&](std::size_t node) {
    const Point from = line.at(node);
    const Point to = line.at(node + 1);
    fcl::Transform3<double> result = placed(0.5 * (from + to));
    result.linear() = fcl::Quaternion<double>::FromTwoVectors(Point::UnitZ(), to - from).toRotationMatrix();
    return result;
  };
  return surface_distance(capsule(a), pose(a), capsule(b), pose(b)) + 2.0 * radius;
}

// Least distance that the rule at the stations leaves to the chords after two nodes.
double least_allowed(const Line& line, std::size_t a, std::size_t b, bool same_interval) {
  const double d = line.build().fiber_diameter_mm;
  const double travel = line.relative_travel(a, b);
  const double intervals = same_interval ? 1.0 : 2.0;
  double tilt = 0.0;
  for (const std::size_t node : {a, b}) {
    for (const std::size_t chord : {node > 0 ? node - 1 : node, node, node + 1})
      tilt = std::max(tilt, line.tilt(chord));
  }
  const double lean = tilt + intervals * line.angle();
  return std::sqrt(d * d - 0.25 * travel * travel) * std::cos(std::min(lean, 0.5 * std::numbers::pi));
}

struct Worst {
  double nodes = 1e9;   // least distance of two nodes, in d
  double chords = 1e9;  // least distance of two chords over what is allowed
  int compared = 0;
};

// Compares a chord with those of other turns near it, in its own interval and the two beside it.
void compare(const Line& line, std::size_t node, Worst& worst) {
  const auto turn = static_cast<std::size_t>(line.build().stations_per_turn);
  const NodeStore& nodes = line.build().nodes;
  const double d = line.build().fiber_diameter_mm;
  for (const std::size_t shift : {turn - 1, turn, turn + 1}) {
    for (std::size_t other = (node + shift) % turn; other + 2 < nodes.size(); other += turn) {
      const std::size_t apart = other > node ? other - node : node - other;
      if (apart < turn / 2) continue;  // along the same piece of fiber
      if (std::hypot(nodes.x(other) - nodes.x(node), nodes.r(other) - nodes.r(node)) > 1.5 * d) continue;
      const bool same_interval = shift == turn;
      if (same_interval) worst.nodes = std::min(worst.nodes, distance_of_nodes(line, node, other) / d);
      const double allowed = least_allowed(line, node, other, same_interval);
      worst.chords = std::min(worst.chords, distance_of_chords(line, node, other) / allowed);
      ++worst.compared;
    }
  }
}

Worst compare_all(const Build& build, std::size_t every) {
  const Line line(build);
  Worst worst;
  for (std::size_t node = 1; node + 2 < build.nodes.size(); node += every) compare(line, node, worst);
  return worst;
}

// FCL is at its best near unit size.
PlanDraft near_unit(std::uint64_t seed) {
  PlanDraft draft = random_plans::draft(seed, {true, false, true, 120.0});
  const double factor = 1.0 / draft.fiber.diameter_mm;
  Spool& spool = draft.spool;
  Traverse& traverse = draft.traverse;
  for (double* length :
       std::array{&draft.fiber.diameter_mm, &spool.barrel_diameter_mm, &spool.flange_diameter_mm,
                  &spool.inside_width_mm, &spool.barrel_taper_mm, &spool.flange_runout_mm, &traverse.pitch_mm,
                  &traverse.left_stop_mm, &traverse.right_stop_mm, &traverse.free_length_mm, &traverse.guide_play_mm,
                  &traverse.reversal.lost_motion_mm, &traverse.reversal.stop_scatter_mm}) {
    *length *= factor;
  }
  draft.wind = {};
  draft.wind.turns = 120.0;
  return draft;
}

}  // namespace

TEST_CASE("the fiber in space keeps its distances") {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const PlanDraft draft = near_unit(seed);
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    const Build build = random_plans::laid(random_plans::plan_of(draft), seed);
    const Worst worst = compare_all(build, 11);
    CHECK(worst.compared > 1000);
    CHECK(worst.nodes > 1.0 - 1e-6);
    CHECK(worst.chords > 1.0 - 1e-6);
  }
}

TEST_CASE("a chord pushed into its neighbour is seen") {
  PlanDraft draft = near_unit(3);
  draft.fiber.friction = 0.3;
  draft.spool.barrel_taper_mm = 0.0;
  draft.traverse.pitch_mm = 1.05;
  const Build build = random_plans::laid(random_plans::plan_of(draft));
  // Where two nodes in a row lie in a valley between turns, with something to be pushed into on either hand.
  const double second_layer = 0.5 * draft.spool.barrel_diameter_mm + 1.2;
  std::size_t pushed = build.nodes.size() / 2;
  const auto in_valley = [&](std::size_t node) {
    return build.nodes.support(node) == Support::valley && build.nodes.r(node) > second_layer;
  };
  while (!(in_valley(pushed) && in_valley(pushed + 1))) REQUIRE(++pushed + 2 < build.nodes.size());
  Build changed = build;
  changed.nodes = NodeStore(build.nodes.x_grid(), build.nodes.r_grid());
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    // Two nodes in a row, straight down by a tenth of a diameter.
    const double down = k == pushed || k == pushed + 1 ? 0.1 : 0.0;
    changed.nodes.push(build.nodes.x_grid().nearest(build.nodes.x(k)),
                       build.nodes.r_grid().nearest(build.nodes.r(k) - down), build.nodes.support(k),
                       build.nodes.rides_up(k));
  }
  Worst worst;
  compare(Line(changed), pushed, worst);
  CHECK(worst.nodes < 1.0 - 1e-3);
  CHECK(worst.chords < 1.0 - 1e-3);
}
