#include "advise/cause_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "advise/draws.h"
#include "base/quantity_text.h"
#include "base/spelling.h"
#include "measure/phrases.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

int rounded(double value) { return static_cast<int>(std::lround(value)); }

double now_of(const MovableSetting& movable, const PlanDraft& draft) {
  return value_at(draft, movable.parts.front().path).value_or(0.0);
}

// Of both stops, what each is set to; else the setting itself.
std::vector<std::pair<std::string, MovableSetting::Part>> named_parts(const MovableSetting& movable) {
  std::vector<std::pair<std::string, MovableSetting::Part>> named;
  for (const MovableSetting::Part& part : movable.parts) {
    if (part.path == "traverse.left_stop") named.emplace_back("the left stop", part);
    if (part.path == "traverse.right_stop") named.emplace_back("the right stop", part);
  }
  if (named.size() < 2) named.assign(1, {movable.words, movable.parts.front()});
  return named;
}

// "0.31 mm (now 1.2 mm)"
std::string then_and_now(const MovableSetting::Part& part, double by, const PlanDraft& draft) {
  const double now = value_at(draft, part.path).value_or(0.0);
  return fmt::format("{} (now {})", shown_value(draft, part.path, now + part.sign * by),
                     shown_value(draft, part.path, now));
}

// "the left stop to 0.31 mm (now 1.2 mm)"
std::string setting(const Move& move, const PlanDraft& draft) {
  std::string all;
  for (const auto& [words, part] : named_parts(move.movable)) {
    all += fmt::format("{}{} to {}", all.empty() ? "" : " and ", words, then_and_now(part, move.by, draft));
  }
  return all;
}

// "without the lost motion (now 0.4 mm)", "with the friction at 0.55 (now 0.5)"
std::string changed(const Move& move, const PlanDraft& draft) {
  const double now = now_of(move.movable, draft), then = now + move.by;
  constexpr double nothing = 1e-9;
  if (move.movable.is_flaw && std::abs(then) <= nothing * std::abs(now))
    return fmt::format("without {} (now {})", move.movable.words, shown_at(move.movable, draft, now));
  return fmt::format("with {} at {} (now {})", move.movable.words, shown_at(move.movable, draft, then),
                     shown_at(move.movable, draft, now));
}

template <class Part>
std::string joined(const std::vector<Move>& moves, Part part) {
  std::string all;
  for (std::size_t i = 0; i < moves.size(); ++i) {
    all += fmt::format("{}{}", i == 0 ? "" : i + 1 == moves.size() ? " and " : ", ", part(moves[i]));
  }
  return all;
}

// "The left stop is 0.9 mm too far in: set it to 0.31 mm (now 1.2 mm), and "
std::string what_to_set(const Remedy& remedy, const PlanDraft& draft) {
  if (remedy.moves.size() > 1) {
    return fmt::format("Set {} together, and ",
                       joined(remedy.moves, [&](const Move& move) { return setting(move, draft); }));
  }
  const Move& move = remedy.moves.front();
  const MovableSetting& movable = move.movable;
  if (movable.is_switch)
    return fmt::format("Start at the other flange, {}, and ", then_and_now(movable.parts.front(), move.by, draft));
  const bool both = named_parts(movable).size() > 1;
  const std::string set =
      both ? setting(move, draft) : "it to " + then_and_now(movable.parts.front(), move.by, draft);
  return fmt::format("{} {} {} {}: set {}, and ", capitalised(movable.words),
                     movable.words == "the stops" ? "are" : "is", shown_at(movable, draft, std::abs(move.by)),
                     move.by > 0.0 ? movable.when_too_low : movable.when_too_high, set);
}

// Of flaws and the fiber: "Without the lost motion (now 0.4 mm) "
std::string what_differs(const Remedy& remedy, const PlanDraft& draft) {
  return capitalised(joined(remedy.moves, [&](const Move& move) { return changed(move, draft); })) + ' ';
}

// "the finding is gone", "about 6 of its 377 places are left, at most 0.24 mm instead of 0.69 mm". The places are those of
// the finding, as it is listed; their share is the mean of several draws.
std::string what_is_left(const Explanation& explanation, const Rest& rest) {
  if (rest.share_left <= 0.0) return "the finding is gone";
  const int before = explanation.finding.occurrences;
  const double share = rest.amount.places / std::max(explanation.before.places, 1e-9);
  const int after = std::max(1, rounded(share * before));
  const bool larger = rest.amount.worst_mm > explanation.finding.size_mm;
  const std::string sizes = fmt::format("{} {} instead of {}", larger ? "but up to" : "at most",
                                        in_mm(rest.amount.worst_mm), in_mm(explanation.finding.size_mm));
  if (after >= before) return fmt::format("there is less of it, {}", sizes);
  return fmt::format("about {} of its {} {} left, {}", count_of(after), counted(before, "place"),
                     after == 1 ? "is" : "are", sizes);
}

// What becomes of the wind as a whole.
std::string side_effects(const Explanation& explanation, const Remedy& remedy) {
  const Grade now = explanation.verdict.grade, then = remedy.verdict.grade;
  const bool bad = then == Grade::do_not_wind;
  std::string text = fmt::format(" The wind as a whole {} {}",
                                 now != then ? "is then"
                                 : bad       ? "is still"
                                             : "stays",
                                 bad ? "not to be wound" : name_of(then));
  if (then != Grade::good) text += ": " + remedy.verdict.reason;
  text += '.';
  if (remedy.makes_worse) text += fmt::format(" That is worse than as it is ({}): do not set it so.", name_of(now));
  std::string worse;
  for (const FindingKind kind : remedy.grown) {
    const Flaw &before = explanation.outcome.of(kind), &after = remedy.outcome.of(kind);
    const std::string instead =
        before.places == 0 ? "none" : fmt::format("{} of up to {}", count_of(before.places), in_mm(before.worst_mm));
    worse += fmt::format("{}{} of up to {} instead of {}", worse.empty() ? "" : "; ", counted(kind, after.places),
                         in_mm(after.worst_mm), instead);
  }
  return worse.empty() ? text : text + fmt::format(" But there is more of another kind: {}.", worse);
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
  const std::string left = what_is_left(explanation, remedy.rest) + '.';
  if (!remedy.can_be_set()) {
    std::string text = what_differs(remedy, draft) + left;
    for (const Move& move : remedy.moves) text += fmt::format(" {}.", move.movable.cure);
    return text + side_effects(explanation, remedy);
  }
  std::string text = what_to_set(remedy, draft) + left + side_effects(explanation, remedy);
  if (remedy.smallest) {
    const MovableSetting& movable = remedy.moves.front().movable;
    text += fmt::format(" At {} already {}.", shown_at(movable, draft, now_of(movable, draft) + *remedy.smallest),
                        what_is_left(explanation, remedy.after_smallest));
  }
  return text;
}

std::string conclusion_of(const Plan& plan, const Explanation& explanation) {
  if (explanation.by_chance) {
    return fmt::format(
        "It came by chance: {} winds were laid that differ only by {} in where the guide stands, less than "
        "anybody can set, and the others hardly have it. No setting is to blame.",
        explanation.draws, in_mm(draw_shift_d * plan.fiber().diameter_mm));
  }
  if (explanation.remedies.empty()) {
    return fmt::format(
        "No single setting brings this down to half, nor do any two of the most promising ones ({} winds were "
        "laid). It "
        "does not come from one setting of this plan.",
        explanation.trials);
  }
  const Remedy& first = explanation.remedies.front();
  const std::string text = words_of(plan, explanation, first);
  if (!first.can_be_set()) return "It comes from the machine or the fiber, not from how it is set. " + text;
  if (!first.gone()) return "No setting that was tried removes it; this does most. " + text;
  return first.moves.size() > 1 ? "No single setting removes it, but two do. " + text : text;
}

}  // namespace laywright
