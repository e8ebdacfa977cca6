#include "payoff/payoff_words.h"

#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "measure/phrases.h"
#include "measure/severity.h"
#include "payoff/hold.h"

namespace laywright {
namespace {

std::string times(double multiple) { return multiple_figure(multiple) + " times"; }

// "810 mm", "12.5 m", "3,000 m".
std::string length_of(double mm) {
  constexpr double metre = 1e3, far = 1e3;
  if (mm < metre) return amount_text(Amount::small_length, mm, 0, false);
  return amount_text(Amount::fiber_length, mm / metre, mm < far * metre ? 1 : 0, false);
}

const char* held_words(HeldBy by) {
  switch (by) {
    case HeldBy::free: return "nothing holds it";
    case HeldBy::led_aside: return "the eye leads it sideways over its neighbours";
    case HeldBy::drawn_over: return "it is drawn over turns that lie beside it, toward the end";
    case HeldBy::in_slit: return "it is jammed in a slit, into which the turns above have pressed it";
    case HeldBy::under_turns: return "an earlier turn lies over it, and it has to be drawn through beneath";
  }
  return "";
}

}  // namespace

std::string multiple_figure(double multiple) {
  return multiple > most_payoff_force ? fmt::format("over {}", figure(most_payoff_force, 0)) : figure(multiple, 2);
}

std::string words_for(DrawOff way) {
  switch (way) {
    case DrawOff::side: return "from the side";
    case DrawOff::over_left: return "over the left end";
    case DrawOff::over_right: return "over the right end";
  }
  return "";
}

std::string payoff_line(const PayoffRun& run, double length_mm) {
  const std::string hardest =
      fmt::format("needs {} the pull of winding, the limit is {}", times(run.greatest), setting(run.limit));
  if (run.catch_count == 0)
    return fmt::format("Drawn off {}, nothing catches: the hardest place {}.", words_for(run.way), hardest);
  return fmt::format("Drawn off {}, the fiber catches in {} {}, {} of {}: the hardest {}.", words_for(run.way),
                     count_of(run.catch_count), run.catch_count == 1 ? "place" : "places", length_of(run.caught_mm),
                     length_of(length_mm), hardest);
}

std::string count_words(const PayoffRun& run) {
  if (run.catch_count == 0) return "no catch";
  std::string parts;
  for (const FindingSeverity severity :
       {FindingSeverity::grave, FindingSeverity::worth_a_look, FindingSeverity::small}) {
    const int count = run.of_severity[static_cast<std::size_t>(severity)];
    if (count == 0) continue;
    parts += fmt::format("{}{} {}", parts.empty() ? "" : ", ", count_of(count), name_of(severity));
  }
  return fmt::format("{} {}: {}", count_of(run.catch_count), run.catch_count == 1 ? "catch" : "catches", parts);
}

const char* short_words(HeldBy by) {
  switch (by) {
    case HeldBy::free: return "free";
    case HeldBy::led_aside: return "led sideways";
    case HeldBy::drawn_over: return "drawn over turns";
    case HeldBy::in_slit: return "jammed in a slit";
    case HeldBy::under_turns: return "under a turn";
  }
  return "";
}

std::string sentence_of(const PayoffCatch& caught, const Plan& plan) {
  std::string sentence =
      fmt::format("{} from the outer end, in layer {}, {}: {}. It comes off at {} the pull of winding",
                  length_of(caught.from_outer_end_mm), caught.layer,
                  place_of(caught.x_mm, plan.spool().inside_width_mm, plan.fiber().diameter_mm),
                  held_words(caught.by), times(caught.multiple));
  if (caught.severity != FindingSeverity::small) sentence += "; drawn less, it stays, and jerks when it lets go";
  return sentence + ".";
}

std::string basis_of(const PayoffRun& run) {
  std::string basis = fmt::format("Estimates, at friction {}", setting(run.friction));
  if (run.friction_assumed) basis += " (assumed, since the plan holds the fiber where it lands)";
  basis += ", on which nearly everything here depends";
  if (run.eye_mm) basis += fmt::format("; the eye {} from the axis, over the middle", length_of(*run.eye_mm));
  return basis + ".";
}

}  // namespace laywright
