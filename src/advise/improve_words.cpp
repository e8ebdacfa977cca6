#include "advise/improve_words.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "advise/movable_setting.h"
#include "base/quantity_text.h"
#include "base/spelling.h"
#include "measure/phrases.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    text += fmt::format("{}{}", i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ", parts[i]);
  }
  return text;
}

const Check* same_check(const WindVerdict& verdict, const Check& check) {
  const auto found = std::find_if(verdict.checks.begin(), verdict.checks.end(), [&](const Check& other) {
    return other.what == check.what && other.side == check.side;
  });
  return found == verdict.checks.end() ? nullptr : &*found;
}

// "Set the pitch to 0.255 mm (now 0.235 mm)."
std::string what_to_set(const Plan& plan, const Improvement& improvement, const Proposal& proposal) {
  std::vector<std::string> all;
  for (std::size_t i = 0; i < improvement.searchables.size(); ++i) {
    const SearchableSetting& searchable = improvement.searchables[i];
    if (proposal.values[i] == searchable.now) continue;
    // A side is changed, not set to a figure.
    if (searchable.is_switch) {
      all.push_back(fmt::format("the start to the {} flange (now {})",
                                searchable_text(plan, searchable, proposal.values[i]),
                                searchable_text(plan, searchable, searchable.now)));
      continue;
    }
    all.push_back(fmt::format("the {} to {} (now {})", searchable.words,
                              searchable_text(plan, searchable, proposal.values[i]),
                              searchable_text(plan, searchable, searchable.now)));
  }
  return fmt::format("Set {}.", joined(all));
}

// "good on each of 5 draws, and on 8 of 10 with a setting one step off"
std::string how_sure(const Proposal& proposal) {
  const int steps = proposal.variants - proposal.draws, good_steps = proposal.good_variants - proposal.good_draws;
  std::string text = proposal.good_draws == proposal.draws
                         ? fmt::format("good on each of {} draws", proposal.draws)
                         : fmt::format("good on {} of {} draws", proposal.good_draws, proposal.draws);
  if (steps > 0) text += fmt::format(", and on {} of {} with a setting one step off", good_steps, steps);
  return text;
}

// "Do not wind: the ridge at the left flange is ...; the limit is 1 fiber diameter. First: set ..."
std::string as_it_is(const WindVerdict& verdict) {
  std::string text = fmt::format("{}: {}.", capitalised(name_of(verdict.grade)), verdict.reason);
  if (verdict.first) text += fmt::format(" First: {}.", *verdict.first);
  return text;
}

}  // namespace

std::string searchable_text(const Plan& plan, const SearchableSetting& searchable, double value) {
  return searchable.path == drift_path ? in_mm(value) : shown_value(plan.draft(), searchable.path, value);
}

std::string words_of(const Plan& plan, const Improvement& improvement, const Proposal& proposal) {
  const WindVerdict &before = improvement.plan.verdict, &after = proposal.verdict;
  std::vector<std::string> gains, costs;
  for (const Check& check : after.checks) {
    const Check* was = same_check(before, check);
    if (was == nullptr || was->grade == check.grade) continue;
    (check.grade < was->grade ? gains : costs)
        .push_back(fmt::format("{} {} instead of {}", spoken_name(check), value_text(check), value_text(*was)));
  }
  const std::size_t steps = proposal.draft.wind.steps.size();
  if (steps > plan.wind().steps.size())
    costs.push_back(counted(steps, "step") + " of the stops to be set during the wind");
  std::string text = what_to_set(plan, improvement, proposal) + ' ' + capitalised(name_of(after.grade));
  if (after.grade != before.grade) text += fmt::format(" instead of {}", name_of(before.grade));
  if (!gains.empty()) text += ": " + joined(gains);
  text += '.';
  if (!costs.empty()) text += fmt::format(" It costs: {}.", joined(costs));
  return text + fmt::format(" It is {}.", how_sure(proposal));
}

std::string conclusion_of(const Improvement& improvement) {
  const Proposal& plan = improvement.plan;
  const std::string laid = fmt::format("{} winds were laid.", count_of(improvement.trials));
  if (improvement.leave_it) {
    if (plan.verdict.grade == Grade::good)
      return fmt::format("Leave the settings as they are: the wind is {}.", how_sure(plan));
    return fmt::format(
        "Leave the settings as they are: the fiber lies well on each of {} draws. What is wrong does not come from "
        "the settings that are turned here. {}",
        plan.draws, as_it_is(plan.verdict));
  }
  if (improvement.best.empty()) {
    return fmt::format(
        "Leave the settings as they are: nothing within the ranges was better on each of {} draws. {} {}",
        plan.draws, laid, as_it_is(plan.verdict));
  }
  const Proposal& best = improvement.best.front();
  const std::string now = fmt::format("{} of {}", plan.good_draws, plan.draws);
  if (best.good_draws == best.draws) {
    return fmt::format("Proposal 1 is {}; the plan as it is, on {} draws. {}", how_sure(best), now, laid);
  }
  return fmt::format(
      "No settings within the ranges were found to be good on all draws. Proposal 1 is better than the plan on "
      "each, and {}; "
      "the plan as it is, on {} draws. {}",
      how_sure(best), now, laid);
}

}  // namespace laywright
