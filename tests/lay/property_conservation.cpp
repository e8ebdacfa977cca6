// Over random plans: nothing is lost. The length along the nodes is the build's and the plan's, turns are the
// spool's, every number is finite, and the surface only grows.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <catch2/catch.hpp>

#include "penetration_checker.h"
#include "random_plans.h"

using namespace laywright;

namespace {

// Sum of the straight edges between nodes, each as long as its arc at mean radius and its travel make it, up to the
// end of the wind; in long double.
long double length_along(const Build& build) {
  const long double angle = 2.0L * std::numbers::pi_v<long double> / build.stations_per_turn;
  const long double end = static_cast<long double>(build.turns) * build.stations_per_turn;
  long double length = 0.0L;
  for (std::size_t k = 1; k < build.nodes.size(); ++k) {
    const long double share = std::min(1.0L, end - static_cast<long double>(k - 1));
    if (share <= 0.0L) break;
    const long double dx = static_cast<long double>(build.nodes.x(k)) - build.nodes.x(k - 1);
    const long double dr = static_cast<long double>(build.nodes.r(k)) - build.nodes.r(k - 1);
    const long double arc = 0.5L * angle * (static_cast<long double>(build.nodes.r(k)) + build.nodes.r(k - 1));
    length += share * std::sqrt(arc * arc + dx * dx + dr * dr);
  }
  return length;
}

void check_length(const Plan& plan, const Build& build) {
  const double along = static_cast<double>(length_along(build));
  CHECK(build.length_mm == Approx(along).epsilon(1e-9));
  if (build.stopped_by == StopReason::length) {
    CHECK(along == Approx(*plan.wind().length_mm).epsilon(1e-9));
  } else if (plan.wind().length_mm) {
    CHECK(along < *plan.wind().length_mm);
  }
}

void check_turns(const Plan& plan, const Build& build) {
  const double nodes = static_cast<double>(build.nodes.size());
  const double end = build.turns * build.stations_per_turn;
  if (build.stopped_by == StopReason::turns) CHECK(build.turns == *plan.wind().turns);
  // The last node lies at or after the end, and none is laid for nothing.
  CHECK(nodes - 1.0 >= end - 1e-6);
  CHECK(nodes - 2.0 <= end + 1e-6);
}

void check_strokes(const Build& build) {
  REQUIRE_FALSE(build.strokes.empty());
  CHECK(build.strokes.front().first_node == 0);
  for (std::size_t s = 1; s < build.strokes.size(); ++s) {
    CHECK(build.strokes[s].first_node > build.strokes[s - 1].first_node);
    CHECK(build.strokes[s].direction == -build.strokes[s - 1].direction);
  }
  CHECK(build.end_of(build.strokes.size() - 1) == build.nodes.size());
}

bool all_finite(const Plan& plan, const Build& build) {
  const Spool& spool = plan.spool();
  const double d = plan.fiber().diameter_mm;
  const double height = 0.5 * (spool.flange_diameter_mm - spool.barrel_diameter_mm) + d;
  const double out = height * std::tan(spool.flange_taper_rad) + spool.flange_runout_mm;
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    const double x = build.nodes.x(k);
    const double r = build.nodes.r(k);
    if (!(x > -out && x < spool.inside_width_mm + out)) return false;  // also catches NaN
    if (!(r > 0.0 && r + 0.5 * d <= 0.5 * spool.flange_diameter_mm + 1e-6 * d)) return false;
  }
  return std::isfinite(build.turns) && std::isfinite(build.length_mm);
}

// Mean radius of each stroke; 0 for strokes of less than a turn, which have no mean to speak of.
std::vector<double> mean_radii(const Build& build) {
  std::vector<double> means;
  for (std::size_t s = 0; s < build.strokes.size(); ++s) {
    const std::size_t first = build.strokes[s].first_node;
    const std::size_t end = build.end_of(s);
    double sum = 0.0;
    for (std::size_t k = first; k < end; ++k) sum += build.nodes.r(k);
    const bool long_enough = end >= first + static_cast<std::size_t>(build.stations_per_turn);
    means.push_back(long_enough ? sum / static_cast<double>(end - first) : 0.0);
  }
  return means;
}

// Most that a stroke's mean radius lies below that of the last stroke of the same hand, in d.
double worst_fall(const Build& build) {
  const std::vector<double> means = mean_radii(build);
  double worst = 0.0;
  for (std::size_t s = 2; s + 1 < means.size(); ++s) {
    if (means[s] > 0.0) worst = std::max(worst, (means[s - 2] - means[s]) / build.fiber_diameter_mm);
  }
  return worst;
}

}  // namespace

TEST_CASE("length, turns and strokes of random plans are conserved") {
  for (std::uint64_t seed = 101; seed <= 160; ++seed) {
    const PlanDraft draft = random_plans::draft(seed);
    const Plan plan = random_plans::plan_of(draft);
    const Build build = random_plans::laid(plan, seed);
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    check_length(plan, build);
    check_turns(plan, build);
    check_strokes(build);
    CHECK(all_finite(plan, build));
    // Turns at less than two diameters leave no gap that a turn could fall through: the same guide motion again,
    // on a surface that sank nowhere, cannot lie lower. (Coarser winds open and close pits many turns deep.)
    if (draft.traverse.pitch_mm < 2.0 * draft.fiber.diameter_mm) CHECK(worst_fall(build) < 0.1);
  }
}

TEST_CASE("a longer wind begins as the shorter one did") {
  // What lies under later turns is not moved by them. The last turn of the shorter wind was still free to move.
  for (std::uint64_t seed = 201; seed <= 215; ++seed) {
    PlanDraft draft = random_plans::draft(seed, {true, true, true, 40.0});
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    draft.wind.length_mm.reset();
    draft.wind.diameter_mm.reset();
    // The radius of the full spool has a part in the choice of the mesh: the same number for both.
    draft.wind.turns = 40.0;
    const Plan shorter_plan = random_plans::plan_of(draft);
    draft.wind.turns = 60.0;
    const Plan longer_plan = random_plans::plan_of(draft);
    const double ratio = static_cast<double>(stations_needed(shorter_plan)) / stations_needed(longer_plan);
    // But those of a soft fiber are (slump.h): here they stay.
    const auto laid = [seed](const Plan& plan, double fidelity) {
      LaySettings settings{seed, fidelity};
      settings.gives_way = false;
      Progress progress;
      return lay(plan, settings, progress).value();
    };
    const Build shorter = laid(shorter_plan, 1.0);
    const Build longer = laid(longer_plan, ratio);
    REQUIRE(shorter.stations_per_turn == longer.stations_per_turn);
    const std::size_t settled = shorter.nodes.size() - static_cast<std::size_t>(shorter.stations_per_turn);
    std::size_t different = 0;
    for (std::size_t k = 0; k < settled; ++k) {
      if (shorter.nodes.x(k) != longer.nodes.x(k) || shorter.nodes.r(k) != longer.nodes.r(k)) ++different;
    }
    CHECK(different == 0);
  }
}
