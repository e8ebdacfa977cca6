#include "verdict/verdict_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/spelling.h"
#include "measure/acceptance.h"
#include "measure/phrases.h"
#include "payoff/payoff_words.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

std::string at_flange(const Check& check) {
  return check.side ? fmt::format(" at the {} flange", name_of(*check.side)) : "";
}

const char* bare_name(Weighed what) {
  switch (what) {
    case Weighed::planned_end: return "planned fiber wound";
    case Weighed::rim_clearance: return "rim clearance";
    case Weighed::greatest_pull: return "greatest pull";
    case Weighed::least_pull: return "least pull";
    case Weighed::bend: return "bend around the barrel";
    case Weighed::spool_speed: return "spool speed";
    case Weighed::clutch_current: return "clutch current";
    case Weighed::ribbon: return "ribbon";
    case Weighed::ridge: return "ridge";
    case Weighed::valley: return "valley";
    case Weighed::unevenness: return "unevenness";
    case Weighed::open_gaps: return "fiber beside open gaps";
    case Weighed::flange_gap: return "flange gap";
    case Weighed::dropped_turns: return "dropped turns";
    case Weighed::drop_depth: return "depth of dropped turns";
    case Weighed::ride_ups: return "ride-ups";
    case Weighed::payoff_force: return "pull to draw it off";
  }
  return "";
}

std::string figure_of(Weighed what, double value) {
  switch (what) {
    case Weighed::dropped_turns:
    case Weighed::ride_ups: return figure(value, 0);
    case Weighed::greatest_pull:
    case Weighed::least_pull:
    case Weighed::spool_speed:
    case Weighed::clutch_current: return figure_with(value, 3);
    case Weighed::planned_end: return figure(value, 1);
    case Weighed::open_gaps: return figure(value, std::abs(value) < 10.0 ? 2 : 1);
    case Weighed::payoff_force: return multiple_figure(value);
    default: return figure(value, 2);
  }
}

// As its owner would write it: "1", "0.75", "1,500"; one that is computed as figures are.
std::string limit_figure(const Check& check) {
  if (check.what == Weighed::least_pull) return figure_of(check.what, check.limit);
  return check.limit >= 1000.0 ? figure(check.limit, 0) : setting(check.limit);
}

// In a sentence: "9.6 fiber diameters", "83.9 %".
std::string told(const Check& check, const std::string& figure) {
  const std::string unit = unit_of(check.what);
  if (unit == "d") return figure + (figure == "1" ? " fiber diameter" : " fiber diameters");
  if (unit == "times") return figure + " times the pull of winding";
  return unit == "per km" ? figure + " places per km" : figure + " " + unit;
}

// What it is like, without its limit.
std::string is_so(const Check& check) {
  const std::string value = told(check, figure_of(check.what, check.value));
  switch (check.what) {
    case Weighed::planned_end: return fmt::format("the spool is full after {} of what is planned", value);
    case Weighed::rim_clearance:
      if (check.value < 0.0) return fmt::format("the fiber stands {} mm beyond the rim", figure(-check.value, 2));
      return fmt::format("only {} are left from the fiber to the rim", value);
    case Weighed::greatest_pull: return fmt::format("the pull grows to {}", value);
    case Weighed::least_pull: return fmt::format("the pull falls to {}", value);
    case Weighed::bend: return fmt::format("the barrel's diameter is {}", value);
    case Weighed::spool_speed: return fmt::format("the spool has to turn at {}", value);
    case Weighed::clutch_current: return fmt::format("the clutch needs {}", value);
    case Weighed::ribbon: return fmt::format("ribbons of turns on turns build up to {} high", value);
    case Weighed::ridge: return fmt::format("the ridge{} is {} high", at_flange(check), value);
    case Weighed::valley: return fmt::format("the valley{} is {} deep", at_flange(check), value);
    case Weighed::unevenness: return fmt::format("the surface differs in height by {}", value);
    case Weighed::open_gaps: return fmt::format("{} of the fiber lies beside open gaps", value);
    case Weighed::flange_gap: return fmt::format("the fiber turns back up to {} short of a flange", value);
    case Weighed::dropped_turns: return fmt::format("turns have fallen into gaps in {}", value);
    case Weighed::drop_depth: return fmt::format("a turn has fallen {} deep into a gap", value);
    case Weighed::ride_ups: return fmt::format("turns climb onto their neighbours in {}", value);
    case Weighed::payoff_force: return "drawn off, the fiber catches and needs " + value;
  }
  return "";
}

std::string limit_of(const Check& check) {
  const std::string limit = told(check, limit_figure(check));
  if (check.what == Weighed::planned_end) return "";
  if (check.grade == Grade::do_not_wind)
    return check.at_least ? fmt::format("; at least {} is needed", limit) : "; the limit is " + limit;
  const bool far = check.beyond() && strain_of(check) > 1.0 + uncertain_share;
  const char* near = far ? "over" : check.beyond() ? "a little over" : "close to";
  return fmt::format(", {} the {} of {}", near, check.at_least ? "least" : "limit", limit);
}

// "this draw", "each of 5 draws", "the worst of 5 draws; good in 3, marginal in 1".
std::string of_which_draws(const WindVerdict& verdict) {
  if (verdict.draws.empty()) return "this draw";
  const auto in = [&](Grade grade) {
    return std::count_if(verdict.draws.begin(), verdict.draws.end(),
                         [&](const DrawSeen& draw) { return draw.grade == grade; });
  };
  const std::size_t all = verdict.draws.size();
  if (static_cast<std::size_t>(in(verdict.grade)) == all) return fmt::format("each of {} draws", all);
  std::string others;
  for (const Grade grade : {Grade::good, Grade::marginal}) {
    if (grade == verdict.grade || in(grade) == 0) continue;
    others += fmt::format("{}{} in {}", others.empty() ? "" : ", ", name_of(grade), in(grade));
  }
  return fmt::format("the worst of {} draws; {}", all, others);
}

std::string one_of_draws(const Build& build, const WindVerdict& verdict) {
  if (verdict.draws.empty()) {
    return fmt::format(
        "One build is one draw of its plan, this one of seed {}; others differ a little. Marginal is what "
        "another draw may put on the other side of its limit.",
        build.seed);
  }
  const auto [least, most] = std::minmax_element(
      verdict.draws.begin(), verdict.draws.end(),
      [](const DrawSeen& a, const DrawSeen& b) { return a.fiber_diameter_mm < b.fiber_diameter_mm; });
  const bool varies = most->fiber_diameter_mm > least->fiber_diameter_mm;
  return fmt::format(
      "These figures are of one draw of the plan, seed {}; the verdict is the worst of {}: of seeds {} to {}, "
      "with the guide shifted by a hundredth of a fiber or two{}.",
      build.seed, verdict.draws.size(), verdict.draws.front().seed, verdict.draws.back().seed,
      varies ? fmt::format(", and fiber of {} to {} mm", setting(least->fiber_diameter_mm),
                           setting(most->fiber_diameter_mm))
             : "");
}

}  // namespace

const char* unit_of(Weighed what) {
  switch (what) {
    case Weighed::rim_clearance:
    case Weighed::bend: return "mm";
    case Weighed::greatest_pull:
    case Weighed::least_pull: return "N";
    case Weighed::spool_speed: return "rpm";
    case Weighed::clutch_current: return "A";
    case Weighed::planned_end:
    case Weighed::open_gaps: return "%";
    case Weighed::dropped_turns:
    case Weighed::ride_ups: return "per km";
    case Weighed::payoff_force: return "times";
    default: return "d";
  }
}

std::string name_of(const Check& check) {
  const std::string name = bare_name(check.what);
  return check.side ? fmt::format("{}, {} flange", name, name_of(*check.side)) : name;
}

std::string spoken_name(const Check& check) { return bare_name(check.what) + at_flange(check); }

std::string value_text(const Check& check) { return figure_of(check.what, check.value) + " " + unit_of(check.what); }

std::string limit_text(const Check& check) {
  return fmt::format("{} {} {}", limit_figure(check), unit_of(check.what), check.at_least ? "at least" : "at most");
}

std::string margin_text(const Check& check) {
  return figure_of(check.what, check.margin) + " " + unit_of(check.what);
}

std::string nearest_words(const Check& check) {
  return fmt::format("every figure keeps its limit with room to spare; nearest to its limit is the {}, {} of {}",
                     spoken_name(check), value_text(check), limit_text(check));
}

std::string sentence_of(const Check& check) { return is_so(check) + limit_of(check); }

std::string verdict_line(const WindVerdict& verdict) {
  std::string line = fmt::format(
      "{} ({}{}): {}.", capitalised(name_of(verdict.grade)), of_which_draws(verdict),
      verdict.long_wind ? fmt::format("; uncertain beyond {} layers", certain_layers) : "", verdict.reason);
  if (verdict.first) line += fmt::format(" First: {}.", *verdict.first);
  return line;
}

std::string draw_words(const Build& build, const WindVerdict& verdict) {
  std::string words = one_of_draws(build, verdict);
  if (verdict.long_wind) {
    words += fmt::format(
        " Beyond {} layers it also depends on the number of stations how much order is left: have it laid with "
        "twice as "
        "many, too (--fidelity 2), and trust what both say.",
        certain_layers);
  }
  return words;
}

std::string weighed_as(const Plan& plan) { return words_for(product_of(plan)); }

}  // namespace laywright
