#include "advise/proposals.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "advise/draws.h"
#include "advise/judged.h"
#include "plan/dialling.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

constexpr std::size_t draws = 5;

std::vector<TrialOrder> steps_of(const PlanDraft& plan, const std::vector<SearchableSetting>& searchables,
                                 const std::vector<double>& values, const LaySettings& settings) {
  std::vector<TrialOrder> orders;
  for (std::size_t i = 0; i < searchables.size(); ++i) {
    // A choice has no step, and what was left as it is need not be met.
    const bool left = searchables[i].late && values[i] == searchables[i].now;
    if (searchables[i].is_switch || left) continue;
    for (const double by : {-searchables[i].step, searchables[i].step}) {
      std::vector<double> off = values;
      off[i] += by;
      orders.push_back({set_searchables(plan, searchables, off), settings});
    }
  }
  if (const double tolerance = plan.fiber.diameter_tolerance_mm; tolerance > 0.0) {
    for (const double by : {-tolerance, tolerance}) {
      orders.push_back({set_searchables(plan, searchables, values), settings});
      orders.back().draft.fiber.diameter_mm += by;
    }
  }
  return orders;
}

// Of two that are as good, the one that leaves more as it is.
double for_what_is_moved(const std::vector<SearchableSetting>& searchables, const std::vector<double>& values) {
  constexpr double each = 0.05;
  double sum = 0.0;
  for (std::size_t i = 0; i < searchables.size(); ++i) sum += values[i] != searchables[i].now ? each : 0.0;
  return sum;
}

void add_variant(Proposal& proposal, const Merit& merit, double cost) {
  proposal.cost = (proposal.cost * proposal.variants + cost) / (proposal.variants + 1);
  const Grade grade = std::max(merit.grade, merit.pull);
  ++proposal.variants;
  proposal.good_variants += grade == Grade::good ? 1 : 0;
  proposal.bad_variants += grade == Grade::do_not_wind ? 1 : 0;
}

using Trials = std::vector<std::optional<Trial>>;

Proposal judged(const Plan& plan, Trials::const_iterator first, const std::optional<MeritWeights>& weights) {
  Proposal proposal;
  proposal.outcome = (*first)->outcome;
  proposal.pull = (*first)->pull;
  for (std::size_t i = 0; i < draws; ++i, ++first) {
    if (!*first) {
      proposal.draw_costs.push_back(std::numeric_limits<double>::infinity());
      continue;
    }
    const Merit merit = merit_of(plan, **first);
    proposal.draw_costs.push_back(cost_of(merit, weights));
    proposal.well_laid_draws += merit.grade == Grade::good ? 1 : 0;
    add_variant(proposal, merit, proposal.draw_costs.back());
  }
  proposal.draws = proposal.variants;
  proposal.good_draws = proposal.good_variants;
  return proposal;
}

// What a dial makes of the positions.
std::vector<double> dialled(const PlanDraft& draft, const std::vector<SearchableSetting>& searchables,
                            std::vector<double> values) {
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (dial_step(draft, searchables[i].path)) values[i] = value_at(draft, searchables[i].path).value_or(values[i]);
  }
  return values;
}

}  // namespace

std::vector<Proposal> judge(const Plan& plan, const std::vector<SearchableSetting>& searchables,
                            const std::vector<std::vector<double>>& positions, const ImproveSettings& settings,
                            const Stretch& stretch, int& trials) {
  std::vector<TrialOrder> orders;
  for (const auto& values : positions) {
    for (TrialOrder& order :
         draws_of(set_searchables(plan.draft(), searchables, values), settings.lay, static_cast<int>(draws))) {
      order.judged = true;  // how a whole wind comes off again counts as well
      orders.push_back(std::move(order));
    }
  }
  const Trials tried = try_all(orders, settings.threads, stretch);
  if (stretch.progress.cancelled()) return {};
  trials += static_cast<int>(orders.size());
  std::vector<Proposal> proposals;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    if (!tried[i * draws]) continue;
    proposals.push_back(judged(plan, tried.begin() + static_cast<std::ptrdiff_t>(i * draws), settings.weights));
    proposals.back().draft = as_dialled(orders[i * draws].draft);  // as it was laid
    proposals.back().values = dialled(proposals.back().draft, searchables, positions[i]);
    proposals.back().cost += for_what_is_moved(searchables, positions[i]);
  }
  return proposals;
}

bool add_steps(const Plan& plan, const std::vector<SearchableSetting>& searchables, std::vector<Proposal>& proposals,
               const ImproveSettings& settings, const Stretch& stretch, int& trials) {
  std::vector<TrialOrder> orders;
  std::vector<Proposal*> owners;  // of each order
  for (Proposal& each : proposals) {
    for (TrialOrder& order : steps_of(plan.draft(), searchables, each.values, settings.lay)) {
      order.judged = true;
      orders.push_back(std::move(order));
      owners.push_back(&each);
    }
  }
  const Trials tried = try_all(orders, settings.threads, stretch);
  if (stretch.progress.cancelled()) return false;
  trials += static_cast<int>(orders.size());
  for (std::size_t i = 0; i < orders.size(); ++i) {
    // A step that is not sound does not count.
    if (!tried[i]) continue;
    const Merit merit = merit_of(plan, *tried[i]);
    add_variant(*owners[i], merit, cost_of(merit, settings.weights));
  }
  return true;
}

bool better_on_all_draws(const Proposal& one, const Proposal& other) {
  return std::equal(one.draw_costs.begin(), one.draw_costs.end(), other.draw_costs.begin(), other.draw_costs.end(),
                    [](double a, double b) { return a < b; });
}

bool add_verdicts(const std::vector<Proposal*>& proposals, const ImproveSettings& settings, const Stretch& stretch) {
  run_parallel(proposals.size(), settings.threads, stretch, [&](std::size_t i, Progress& inner) {
    if (std::optional<Judged> judged = judge_plan(proposals[i]->draft, settings.lay, inner)) {
      proposals[i]->outcome = judged->outcome;
      proposals[i]->verdict = std::move(judged->verdict);
    }
  });
  return !stretch.progress.cancelled();
}

}  // namespace laywright
