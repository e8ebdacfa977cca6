#include "advise/cause.h"

#include <algorithm>
#include <iterator>
#include <limits>
#include <utility>

#include "advise/cause_search.h"
#include "advise/cause_words.h"
#include "advise/setting_text.h"
#include "plan/dialling.h"
#include "plan/plan_values.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

// A search lays the layers up to the first where the finding has this share of its greatest size, and some more.
constexpr double size_to_show = 0.7;
constexpr int layers_above = 2;
constexpr int least_layers = 8;
// Candidates that are laid in full, and on how many draws.
constexpr std::size_t confirmed_candidates = 5;
constexpr int draws_before = 3, draws_after = 2;
// A finding of which other draws have less than this share came by chance.
constexpr double chance_share = 0.1;

// The plan's first layers; the whole plan when it has no more.
PlanDraft first_layers(const Plan& plan, const Build& build, int layers) {
  const auto count = static_cast<std::size_t>(layers);
  if (count >= build.strokes.size()) return plan.draft();
  return shortened(plan.draft(), static_cast<double>(build.strokes[count].first_node) /
                                     static_cast<double>(build.stations_per_turn));
}

int layers_to_show(const Build& build, const Finding& finding) {
  std::size_t first = static_cast<std::size_t>(finding.last_layer);
  for (const FindingPlace& place : finding.places) {
    if (place.size_mm >= size_to_show * finding.size_mm) first = std::min(first, build.stroke_of(place.node) + 1);
  }
  return std::min(static_cast<int>(build.strokes.size()),
                  std::max(least_layers, static_cast<int>(first) + layers_above));
}

// As they were laid: what a dial makes of them.
std::vector<Change> dialled(const PlanDraft& draft, std::vector<Change> changes) {
  const PlanDraft laid = as_dialled(with_changes(draft, changes));
  for (Change& change : changes) change.value = value_at(laid, change.path).value_or(change.value);
  return changes;
}

// Lays the whole plan, as it is and with what the search found.
class Confirmation {
 public:
  Confirmation(const Plan& plan, const CauseSettings& settings) : plan_(plan), settings_(settings) {}

  void run(std::vector<Candidate> candidates, const Measurements& measurements, Explanation& explanation,
           Progress& progress) {
    if (candidates.size() > confirmed_candidates) candidates.resize(confirmed_candidates);
    // The plan as it is has one draw already.
    std::vector<TrialOrder> orders = draws_of(plan_.draft(), settings_.lay, draws_before - 1, 1);
    for (const Candidate& each : candidates) {
      add(each.moves, true, orders);
      if (each.smallest) add({{each.moves.front().movable, *each.smallest}}, false, orders);
    }
    const auto trials = try_all(orders, settings_.threads, {progress, progress.share(), 1.0});
    explanation.trials += static_cast<int>(orders.size());
    if (progress.cancelled()) return;

    std::optional<MeanAmount> before = mean_amount(plan_, explanation.sought, trials, 0, draws_before - 1);
    if (!before) before.emplace();
    const double of_others = before->of_sought.gravity;
    add_draw(*before, plan_, explanation.sought, measurements.findings);
    before_ = *before;
    explanation.before = before_.of_sought;
    explanation.draws = before_.draws;
    explanation.by_chance = of_others < chance_share * amount_of(explanation.sought, measurements.findings).gravity;

    std::size_t at = static_cast<std::size_t>(draws_before - 1);
    for (const Candidate& each : candidates) {
      if (std::optional<Remedy> made = remedy(each, trials, at, explanation)) {
        explanation.remedies.push_back(std::move(*made));
      }
      at += static_cast<std::size_t>(each.smallest ? 2 * draws_after : draws_after);
    }
  }

 private:
  void add(const std::vector<Move>& moves, bool judged, std::vector<TrialOrder>& orders) const {
    const PlanDraft moved = with_changes(plan_.draft(), changes_of(plan_.draft(), moves));
    std::vector<TrialOrder> draws = draws_of(moved, settings_.lay, draws_after);
    draws.front().judged = judged;
    std::move(draws.begin(), draws.end(), std::back_inserter(orders));
  }

  [[nodiscard]] Rest rest(const MeanAmount& mean) const {
    return {mean.of_sought, mean.of_sought.gravity / before_.of_sought.gravity,
            mean.gravity_of_all / before_.gravity_of_all};
  }

  // None where the whole plan does not bear out what the search found.
  [[nodiscard]] std::optional<Remedy> remedy(const Candidate& candidate,
                                             const std::vector<std::optional<Trial>>& trials, std::size_t at,
                                             const Explanation& explanation) const {
    const SoughtFinding& sought = explanation.sought;
    Remedy remedy;
    remedy.moves = candidate.moves;
    const auto mean = mean_after(remedy.moves, plan_, sought, trials, at, draws_after);
    if (!mean) return std::nullopt;
    remedy.changes = dialled(plan_.draft(), changes_of(plan_.draft(), candidate.moves));
    remedy.rest = rest(*mean);
    remedy.outcome = trials[at]->outcome;
    remedy.verdict = *trials[at]->verdict;
    remedy.makes_worse = remedy.verdict.grade > explanation.verdict.grade;
    if (remedy.rest.share_left > Remedy::halved_share || remedy.rest.share_of_all > Remedy::no_worse)
      return std::nullopt;
    remedy.grown = kinds_that_grow(explanation.outcome, remedy.outcome, sought.kind);
    if (!candidate.smallest) return remedy;
    const auto smaller = mean_after(remedy.moves, plan_, sought, trials, at + draws_after, draws_after);
    if (!smaller) return remedy;
    const Rest after = rest(*smaller);
    if (after.share_left <= Remedy::halved_share && after.share_of_all <= Remedy::no_worse) {
      remedy.smallest = candidate.smallest;
      remedy.after_smallest = after;
    }
    return remedy;
  }

  const Plan& plan_;
  CauseSettings settings_;
  MeanAmount before_;
};

// On as few layers as show it, or else on all.
bool begin_search(CauseSearch& search, const Plan& plan, const Build& build, Explanation& explanation,
                  Progress& progress) {
  const int all = static_cast<int>(build.strokes.size());
  explanation.layers_tried = layers_to_show(build, explanation.finding);
  if (search.begin(first_layers(plan, build, explanation.layers_tried), progress)) return true;
  if (progress.cancelled() || explanation.layers_tried == all) return false;
  explanation.layers_tried = all;
  return search.begin(plan.draft(), progress);
}

// Of those whose moves are such, all that are not clearly better than the best of the others.
template <class Ranked>
void drop_what_is_no_better(std::vector<Ranked>& all, bool (*such)(const std::vector<Move>&)) {
  constexpr double clearly = 0.3;
  double best = std::numeric_limits<double>::infinity();
  for (const Ranked& each : all) {
    if (!such(each.moves)) best = std::min(best, each.rank());
  }
  std::erase_if(all, [&](const Ranked& each) { return such(each.moves) && each.rank() + clearly > best; });
}

// Tension, side of the start.
bool turn_late(const std::vector<Move>& moves) {
  return std::any_of(moves.begin(), moves.end(), [](const Move& move) { return move.movable.wants_evidence; });
}

std::optional<TensionRoom> room_of(const Plan& plan, const Build& build, const Measurements& measurements) {
  const TakeupRun run = pull_and_speed(plan, build, measurements);
  std::vector<Check> pull = weigh(plan, build, measurements, &run);
  std::erase_if(pull, [](const Check& check) { return !depends_on_tension(check.what); });
  return tension_room(plan.draft(), pull);
}

template <class Ranked>
void sort_by_rank(std::vector<Ranked>& all) {
  std::stable_sort(all.begin(), all.end(), [](const Ranked& a, const Ranked& b) { return a.rank() < b.rank(); });
}

}  // namespace

bool want_evidence(const std::vector<Move>& moves) {
  return std::any_of(moves.begin(), moves.end(),
                     [](const Move& move) { return !can_be_set(move.movable) || move.movable.wants_evidence; });
}

void keep_singled_out(std::vector<Remedy>& remedies) { drop_what_is_no_better(remedies, want_evidence); }

Result<Explanation> explain(const Plan& plan, const Build& build, const Measurements& measurements,
                            const Finding& finding, const CauseSettings& settings, Progress& progress) {
  Explanation explanation;
  explanation.finding = finding;
  explanation.sought = sought_finding(plan, finding);
  explanation.outcome = outcome_of(plan, build, measurements);
  progress.report(0.0);
  run_parallel(1, 1, {progress, 0.0, 0.0}, [&](std::size_t, Progress& inner) {
    const TakeupRun run = take_up(plan, build, measurements, inner);
    explanation.verdict = verdict_of(plan, build, measurements, &run);
    if (run.payoff) explanation.outcome.payoff = outcome_of(*run.payoff);
  });

  CauseSearch search(plan, explanation.sought, room_of(plan, build, measurements), settings);
  std::vector<Candidate> candidates;
  if (begin_search(search, plan, build, explanation, progress)) {
    candidates = search.try_singles(progress);
    const bool single_does = std::any_of(candidates.begin(), candidates.end(), [](const Candidate& each) {
      return each.share_left <= Remedy::gone_share;
    });
    if (!single_does && !progress.cancelled()) {
      explanation.pairs_tried = true;
      for (Candidate& pair : search.try_pairs(progress)) candidates.push_back(std::move(pair));
    }
    // They cost whole winds to confirm.
    drop_what_is_no_better(candidates, turn_late);
    sort_by_rank(candidates);
  }
  explanation.trials = search.trials();
  explanation.tried = search.tried();
  if (!progress.cancelled()) {
    Confirmation(plan, settings).run(std::move(candidates), measurements, explanation, progress);
  }
  if (progress.cancelled()) return stopped();
  keep_singled_out(explanation.remedies);
  sort_by_rank(explanation.remedies);
  for (Remedy& remedy : explanation.remedies) remedy.text = words_of(plan, explanation, remedy);
  explanation.text = conclusion_of(plan, explanation);
  return explanation;
}

}  // namespace laywright
