#include "flawed_plans.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "advise/draws.h"
#include "base/random.h"
#include "plan/plan_values.h"
#include "verdict/verdict.h"

namespace laywright::testing {
namespace {

double between(Random& random, double low, double high) { return low + (high - low) * random.uniform(); }

// As a person would write it.
double to_dial(double value, double step) { return std::round(value / step) / std::round(1.0 / step); }

struct Base {
  std::string name;
  PlanDraft draft;
};

struct Kind {
  const char* name;
  double diameter_mm, barrel_mm, flange_mm;
  double width_mm[2], pitch_d[2], free_length_mm[2], friction[2];
  std::optional<double> core_mm, shear_MPa;
};

constexpr double layers_low = 7.0, layers_high = 11.0;

Base base_of(Random& random) {
  static const Kind kinds[] = {
      {"fiber", 0.245, 150.0, 236.0, {10.0, 16.0}, {1.03, 1.08}, {20.0, 90.0}, {0.4, 0.6}, 0.125, {}},
      {"wire", 0.22, 63.0, 100.0, {10.0, 16.0}, {1.04, 1.09}, {20.0, 60.0}, {0.4, 0.6}, 0.2, 45.0e3},
      {"line", 0.5, 60.0, 120.0, {20.0, 30.0}, {1.03, 1.09}, {30.0, 100.0}, {0.25, 0.5}, {}, 100.0}};
  const Kind& kind = kinds[static_cast<std::size_t>(3.0 * random.uniform())];
  const auto drawn = [&](const double(&range)[2]) { return between(random, range[0], range[1]); };
  PlanDraft draft;
  draft.title = kind.name;
  draft.spool.barrel_diameter_mm = kind.barrel_mm;
  draft.spool.flange_diameter_mm = kind.flange_mm;
  draft.spool.inside_width_mm = std::round(drawn(kind.width_mm));
  draft.fiber.diameter_mm = kind.diameter_mm;
  draft.fiber.friction = to_dial(drawn(kind.friction), 0.05);
  draft.fiber.core_diameter_mm = kind.core_mm;
  draft.fiber.shear_modulus_MPa = kind.shear_MPa;
  Traverse& traverse = draft.traverse;
  traverse.pitch_mm = to_dial(drawn(kind.pitch_d) * kind.diameter_mm, 0.001);
  traverse.free_length_mm = std::round(drawn(kind.free_length_mm));
  traverse.start = random.uniform() < 0.5 ? Side::left : Side::right;
  const double lag =
      traverse.free_length_mm * traverse.pitch_mm / (3.14159 * kind.barrel_mm) * 0.693;  // MODEL.md: ln 2 of it
  for (double* stop : {&traverse.left_stop_mm, &traverse.right_stop_mm}) {
    *stop = to_dial(0.5 * kind.diameter_mm - lag + between(random, -0.2, 0.2) * kind.diameter_mm, 0.01);
  }
  if (random.uniform() < 0.5) {
    traverse.reversal.kind = ReversalKind::ramp;
    traverse.reversal.turns = 0.25;
  }
  const double layers = between(random, layers_low, layers_high);
  draft.wind.turns = std::round(layers * draft.spool.inside_width_mm / traverse.pitch_mm);
  draft.wind.tension_N = 0.5;
  return {kind.name, draft};
}

std::optional<Grade> grade_of(const PlanDraft& draft, const LaySettings& settings) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) return {};
  Progress progress;
  const Result<Build> build = lay(plan.value(), settings, progress);
  if (!build.ok()) return {};
  const Measurements measurements = measure(plan.value(), build.value(), progress);
  return verdict_of(plan.value(), build.value(), measurements, nullptr).grade;
}

bool is_good(const PlanDraft& draft) {
  constexpr int draws = 5;
  const std::vector<TrialOrder> orders = draws_of(draft, {}, draws);
  return std::all_of(orders.begin(), orders.end(),
                     [](const TrialOrder& order) { return grade_of(order.draft, order.settings) == Grade::good; });
}

// One way to have a setting wrong.
std::string spoil(PlanDraft& draft, int which, Random& random) {
  const double d = draft.fiber.diameter_mm;
  Traverse& traverse = draft.traverse;
  const bool up = random.uniform() < 0.5;
  const double much = random.uniform();
  const auto more = [&](double low, double high) { return low + (high - low) * much; };
  switch (which) {
    case 0:
      traverse.pitch_mm = to_dial(traverse.pitch_mm * (up ? more(1.12, 1.4) : more(0.96, 0.9)), 0.001);
      return "traverse.pitch";
    case 1:
      traverse.left_stop_mm = to_dial(traverse.left_stop_mm + (up ? more(2.0, 6.0) : -more(1.5, 4.0)) * d, 0.01);
      return "traverse.left_stop";
    case 2:
      traverse.right_stop_mm = to_dial(traverse.right_stop_mm + (up ? more(2.0, 6.0) : -more(1.5, 4.0)) * d, 0.01);
      return "traverse.right_stop";
    case 3:
      traverse.reversal.kind = up ? ReversalKind::dwell : ReversalKind::ramp;
      traverse.reversal.turns = to_dial(more(2.0, 6.0), 0.25);
      return "traverse.reversal.turns";
    case 4: traverse.free_length_mm = std::round(more(800.0, 2000.0) * d); return "traverse.free_length";
    default:
      traverse.reversal.lost_motion_mm = to_dial(more(0.5, 1.5) * d, 0.01);
      return "traverse.reversal.lost_motion";
  }
}

}  // namespace

std::vector<FlawedPlan> flawed_plans(std::uint64_t seed, int count) {
  constexpr int ways = 6;
  Random random(seed);
  std::vector<FlawedPlan> plans;
  while (static_cast<int>(plans.size()) < count) {
    const Base base = base_of(random);
    if (!is_good(base.draft)) continue;
    FlawedPlan plan{base.draft, base.draft, {}, base.name + ":"};
    const int settings = 1 + static_cast<int>(3.0 * random.uniform());
    std::vector<int> order(ways);
    for (int i = 0; i < ways; ++i) order[static_cast<std::size_t>(i)] = i;
    for (int i = 0; i < settings; ++i) {
      const auto at = static_cast<std::size_t>(i);
      std::swap(order[at], order[at + static_cast<std::size_t>((ways - i) * random.uniform())]);
      const std::string path = spoil(plan.draft, order[at], random);
      plan.wrong.push_back(path);
      plan.story += fmt::format(" {} {:.3f} -> {:.3f};", path, value_at(plan.good, path).value_or(0.0),
                                value_at(plan.draft, path).value_or(0.0));
    }
    if (grade_of(plan.draft, {}) == Grade::do_not_wind) plans.push_back(std::move(plan));
  }
  return plans;
}

}  // namespace laywright::testing
