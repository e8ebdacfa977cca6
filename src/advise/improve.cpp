#include "advise/improve.h"

#include <algorithm>
#include <utility>

#include "advise/draws.h"
#include "advise/improve_search.h"
#include "advise/improve_words.h"
#include "advise/setting_text.h"

namespace laywright {
namespace {

constexpr int search_layers = 12;
constexpr int draws = 3;
// Positions that are laid in full: more than are told, since not all bear it out.
constexpr std::size_t more_than_told = 2;

// The plan as it is, for the number of turns of its first layers; none when cancelled.
std::optional<double> turns_of_first_layers(const Plan& plan, const LaySettings& settings, Progress& progress) {
  constexpr double quick_look = 0.25;
  LaySettings quick = settings;
  quick.fidelity *= quick_look;
  const Result<Build> build = lay(plan, quick, progress);
  if (!build.ok()) return std::nullopt;
  const auto& strokes = build.value().strokes;
  if (strokes.size() <= search_layers) return build.value().turns;
  return static_cast<double>(strokes[search_layers].first_node) / build.value().stations_per_turn;
}

// All that a proposal is judged by: its draws, each dial a step up and down, and the fiber at both ends of its tolerance.
std::vector<TrialOrder> variants_of(const PlanDraft& plan, const std::vector<Knob>& knobs,
                                    const std::vector<double>& values, const LaySettings& settings) {
  std::vector<TrialOrder> orders = draws_of(set_knobs(plan, knobs, values), settings, draws);
  for (std::size_t i = 0; i < knobs.size(); ++i) {
    for (const double by : {-knobs[i].step, knobs[i].step}) {
      std::vector<double> off = values;
      off[i] += by;
      orders.push_back({set_knobs(plan, knobs, off), settings});
    }
  }
  if (const double tolerance = plan.fiber.diameter_tolerance_mm; tolerance > 0.0) {
    for (const double by : {-tolerance, tolerance}) {
      orders.push_back({set_knobs(plan, knobs, values), settings});
      orders.back().draft.fiber.diameter_mm += by;
    }
  }
  return orders;
}

void add(Merit& sum, const Merit& one) {
  sum.beyond_limits_d += one.beyond_limits_d;
  sum.gap_share += one.gap_share;
  sum.edge_deviation_d += one.edge_deviation_d;
  sum.rim_use += one.rim_use;
}

// None where the position itself could not be laid; a variant that is not sound does not count.
std::optional<Proposal> judged(const Plan& plan, const Improvement& improvement, const Found& found,
                               const std::vector<std::optional<Trial>>& trials, std::size_t begin, std::size_t end,
                               const ImproveSettings& settings) {
  if (!trials[begin]) return std::nullopt;
  Proposal proposal;
  proposal.draft = set_knobs(plan.draft(), improvement.knobs, found.values);
  proposal.values = found.values;
  proposal.outcome = trials[begin]->outcome;
  for (std::size_t i = begin; i < end; ++i) {
    if (!trials[i]) continue;
    const Merit merit = merit_of(plan, trials[i]->outcome);
    add(proposal.mean, merit);
    ++proposal.variants;
    proposal.keep_limits += merit.keeps_limits() ? 1 : 0;
  }
  proposal.mean.beyond_limits_d /= proposal.variants;
  proposal.mean.gap_share /= proposal.variants;
  proposal.mean.edge_deviation_d /= proposal.variants;
  proposal.mean.rim_use /= proposal.variants;
  proposal.cost = cost_of(proposal.mean, settings.weights);
  return proposal;
}

// The plan as it is first, then the candidates, all in full.
bool confirm(const Plan& plan, const std::vector<Found>& candidates, const ImproveSettings& settings,
             Improvement& improvement, Progress& progress) {
  std::vector<TrialOrder> orders;
  std::vector<std::size_t> ends;
  for (const Found& each : candidates) {
    for (TrialOrder& order : variants_of(plan.draft(), improvement.knobs, each.values, settings.lay)) {
      orders.push_back(std::move(order));
    }
    ends.push_back(orders.size());
  }
  const auto trials = try_all(orders, settings.threads, {progress, progress.share(), 1.0});
  if (progress.cancelled()) return false;
  improvement.trials += static_cast<int>(orders.size());
  std::size_t begin = 0;
  for (std::size_t i = 0; i < candidates.size(); begin = ends[i], ++i) {
    std::optional<Proposal> proposal = judged(plan, improvement, candidates[i], trials, begin, ends[i], settings);
    if (!proposal) continue;
    if (i == 0) {
      improvement.plan = std::move(*proposal);
    } else {
      improvement.best.push_back(std::move(*proposal));
    }
  }
  return true;
}

Issue stopped() { return option_issue("", "", stopped_text); }

}  // namespace

Result<Improvement> improve(const Plan& plan, const ImproveSettings& settings, Progress& progress) {
  Result<std::vector<Knob>> knobs = knobs_of(plan.draft(), settings.wishes, settings.drift);
  if (!knobs.ok()) return knobs.issues();
  Improvement improvement;
  improvement.knobs = std::move(knobs).value();
  if (improvement.knobs.empty()) return option_issue("", "", "there is nothing left to turn; keep fewer settings");

  const std::optional<double> turns = turns_of_first_layers(plan, settings.lay, progress);
  if (!turns) return stopped();
  ImproveSearch search(shortened(plan.draft(), *turns), improvement.knobs, settings);
  std::vector<Found> found = search.run(progress);
  improvement.trials = search.trials();
  improvement.layers_tried = search_layers;
  if (progress.cancelled()) return stopped();

  std::vector<double> now;
  for (const Knob& knob : improvement.knobs) now.push_back(knob.now);
  std::erase_if(found, [&](const Found& each) { return each.values == now; });
  const std::size_t most = static_cast<std::size_t>(settings.best) + more_than_told;
  if (found.size() > most) found.resize(most);
  found.insert(found.begin(), Found{now, 0.0});
  if (!confirm(plan, found, settings, improvement, progress)) return stopped();

  std::stable_sort(improvement.best.begin(), improvement.best.end(),
                   [](const Proposal& a, const Proposal& b) { return a.cost < b.cost; });
  std::erase_if(improvement.best, [&](const Proposal& each) { return each.cost >= improvement.plan.cost; });
  if (improvement.best.size() > static_cast<std::size_t>(settings.best)) {
    improvement.best.resize(static_cast<std::size_t>(settings.best));
  }
  for (Proposal& each : improvement.best) each.text = words_of(plan, improvement, each);
  improvement.text = conclusion_of(plan, improvement);
  return improvement;
}

}  // namespace laywright
