#include "advise/cause_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "advise/draws.h"
#include "base/spelling.h"
#include "measure/phrases.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

int rounded(double value) { return static_cast<int>(std::lround(value)); }

std::string places(int count) { return fmt::format("{} place{}", count_of(count), count == 1 ? "" : "s"); }

double now_of(const Dial& dial, const PlanDraft& draft) {
  return value_at(draft, dial.parts.front().path).value_or(0.0);
}

// "at 0.31 mm instead of 1.2 mm"
std::string at_instead(const Move& move, const PlanDraft& draft) {
  const double now = now_of(move.dial, draft);
  return fmt::format("at {} instead of {}", shown_at(move.dial, draft, now + move.by),
                     shown_at(move.dial, draft, now));
}

// "the left stop at 0.31 mm instead of 1.2 mm"
std::string moved(const Move& move, const PlanDraft& draft) {
  return fmt::format("{} {}", move.dial.words, at_instead(move, draft));
}

// "The left stop is 0.9 mm too far in: at 0.31 mm instead of 1.2 mm"
std::string blame(const Remedy& remedy, const PlanDraft& draft) {
  if (remedy.moves.size() > 1) {
    std::string all;
    for (std::size_t i = 0; i < remedy.moves.size(); ++i) {
      all += fmt::format("{}{}",
                         i == 0                         ? ""
                         : i + 1 == remedy.moves.size() ? " and "
                                                        : ", ",
                         moved(remedy.moves[i], draft));
    }
    return fmt::format("With {} together", all);
  }
  const Move& move = remedy.moves.front();
  if (move.dial.is_switch) return fmt::format("With {}", moved(move, draft));
  return fmt::format("{} {} {} {}: {}", capitalised(move.dial.words),
                     move.dial.words.ends_with("stops") && move.dial.words.starts_with("the stops") ? "are" : "is",
                     shown_at(move.dial, draft, std::abs(move.by)),
                     move.by > 0.0 ? move.dial.when_too_low : move.dial.when_too_high, at_instead(move, draft));
}

// "the finding is gone", "40 of 245 places are left, 0.50 mm at most instead of 2.0 mm"
std::string what_is_left(const Explanation& explanation, const Rest& rest) {
  if (rest.share_left <= 0.0) return "the finding is gone";
  const int before = rounded(explanation.before.places), after = std::max(1, rounded(rest.amount.places));
  const std::string sizes =
      fmt::format("{} at most instead of {}", in_mm(rest.amount.worst_mm), in_mm(explanation.before.worst_mm));
  if (after >= before) return fmt::format("it is smaller, {}, in {}", sizes, places(after));
  return fmt::format("{} of {} are left, {}", count_of(after), places(before), sizes);
}

// What gets better or worse along with it.
std::string side_effects(const Explanation& explanation, const Remedy& remedy) {
  std::string worse;
  for (const FindingKind kind : remedy.grown) {
    const Flaw &before = explanation.outcome.of(kind), &after = remedy.outcome.of(kind);
    const std::string instead =
        before.places == 0 ? "none" : fmt::format("{} up to {}", count_of(before.places), in_mm(before.worst_mm));
    worse += fmt::format("{}{} up to {} instead of {}", worse.empty() ? "" : "; ", counted(kind, after.places),
                         in_mm(after.worst_mm), instead);
  }
  std::string text = fmt::format(" Of all findings together {:.0f} % is left.", 100.0 * remedy.rest.share_of_all);
  if (!worse.empty()) return text + fmt::format(" But there is more of another kind: {}.", worse);
  return text + " No other kind of finding grows.";
}

}  // namespace

std::string counted(FindingKind kind, int places) {
  constexpr std::array<std::pair<const char*, const char*>, finding_kinds> names{{{"gap", "gaps"},
                                                                                  {"flange gap", "flange gaps"},
                                                                                  {"pile-up", "pile-ups"},
                                                                                  {"edge valley", "edge valleys"},
                                                                                  {"ride-up", "ride-ups"},
                                                                                  {"dropped turn", "dropped turns"},
                                                                                  {"bridge", "bridges"},
                                                                                  {"ribbon", "ribbons"},
                                                                                  {"rim overrun", "rim overruns"}}};
  const auto& [one, many] = names[static_cast<std::size_t>(kind)];
  return fmt::format("{} {}", count_of(places), places == 1 ? one : many);
}

std::string words_of(const Plan& plan, const Explanation& explanation, const Remedy& remedy) {
  const PlanDraft& draft = plan.draft();
  std::string text = fmt::format("{} {}.", blame(remedy, draft), what_is_left(explanation, remedy.rest));
  if (remedy.smallest) {
    const Dial& dial = remedy.moves.front().dial;
    text += fmt::format(" At {} already {}.", shown_at(dial, draft, now_of(dial, draft) + *remedy.smallest),
                        what_is_left(explanation, remedy.after_smallest));
  }
  return text + side_effects(explanation, remedy);
}

std::string conclusion_of(const Plan& plan, const Explanation& explanation) {
  if (explanation.by_chance) {
    return fmt::format(
        "It came by chance: of {} winds that differ by {} in where the guide stands, less than can be set, the "
        "others "
        "hardly have it. No setting is to blame.",
        explanation.draws, in_mm(draw_shift_d * plan.fiber().diameter_mm));
  }
  if (explanation.remedies.empty()) {
    return fmt::format(
        "No single setting, and no two of the most promising ones together, bring this down to half, within the "
        "ranges that were tried ({} builds). It does not come from one setting of this plan.",
        explanation.trials);
  }
  const Remedy& first = explanation.remedies.front();
  std::string text = words_of(plan, explanation, first);
  if (!first.gone()) return "No setting that was tried removes it; this one does most. " + text;
  if (first.moves.size() > 1 && first.moves.front().dial.is_flaw)
    return "It comes from flaws of the machine. " + text;
  if (first.moves.size() > 1) return "No single setting removes it, but two do. " + text;
  return text;
}

}  // namespace laywright
