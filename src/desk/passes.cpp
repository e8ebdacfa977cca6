#include "desk/passes.h"

#include <algorithm>

#include "lay/lay.h"
#include "plan/size_estimate.h"

namespace laywright {
namespace {

// Weight of the newest experience.
constexpr double weight = 0.5;
constexpr double least_ns = 60.0, most_ns = 3000.0;
// Fewer nodes say more about the clock than about laying.
constexpr double telling_nodes = 10'000.0;
// A first look that is nearly full is not worth the wait for the full one.
constexpr double nearly_full = 0.6;
constexpr double second_look_fidelity = 0.25;
// The whole wind is worth a somewhat longer wait than its beginning.
constexpr double patience = 1.4;

}  // namespace

void LayCost::learn(double seconds, double nodes) {
  if (nodes < telling_nodes) return;
  const double newest = std::clamp(seconds * 1e9 / nodes, least_ns, most_ns);
  ns_per_node += weight * (newest - ns_per_node);
}

std::vector<Pass> passes_for(const Plan& plan, const LayCost& cost) {
  const double stations = stations_needed(plan);
  const double nodes = std::max(1.0, turns_estimate(plan.draft())) * stations;
  const double affordable = first_look_ms * 1e6 / cost.ns_per_node / nodes;  // as a share of all nodes
  if (affordable >= nearly_full) return {Pass{}};
  const double coarsest = std::min(1.0, std::max(coarsest_fidelity, fewest_stations / stations));
  if (affordable * patience >= coarsest) return {Pass{std::max(coarsest, affordable), 1.0}, Pass{}};
  return {Pass{coarsest, affordable / coarsest}, Pass{std::max(coarsest, second_look_fidelity), 1.0}, Pass{}};
}

Plan plan_for(const Plan& plan, const Pass& pass) {
  if (pass.whole()) return plan;
  PlanDraft draft = plan.draft();
  Wind& wind = draft.wind;
  if (wind.length_mm) {
    *wind.length_mm *= pass.share;
  } else {
    const double turns = pass.share * turns_estimate(draft);
    wind.diameter_mm.reset();
    wind.turns = turns;
  }
  const Result<Plan> shorter = check(draft);
  return shorter ? shorter.value() : plan;
}

}  // namespace laywright
