#include "answers/follow_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "advise/fit_words.h"
#include "advise/movable_setting.h"
#include "answers/reading_text.h"
#include "figures/figures.h"

namespace laywright {
namespace {

bool is_stop(const std::string& path) { return path == "traverse.left_stop" || path == "traverse.right_stop"; }

std::string with_unit(const Observation& observation, double value, bool inch) {
  return reading_text(observation, value, inch) + (observation.is_turns ? " turns" : "");
}

std::string against_plan(const Compared& each, bool inch) {
  const Observation& o = each.observation;
  return fmt::format("{} reads {}, the plan has {}, {} more or less", o.words(), with_unit(o, o.measured, inch),
                     reading_text(o, each.planned, inch), reading_text(o, each.tolerance, inch));
}

// Of a dwell or lost motion that was found: what else it may be.
std::string standing_may_be(const Plan& plan, const Fit& fit) {
  for (const Fitted& each : fit.fitted) {
    const double more = each.value - each.unknown.believed;
    if (each.unknown.path != "traverse.reversal.turns" || each.unknown.believed >= each.low) continue;
    return fmt::format(" A dwell that is too long and lost motion look alike: {} of lost motion would do the same.",
                       shown_value(plan.draft(), "traverse.reversal.lost_motion", more * plan.traverse().pitch_mm));
  }
  return "";
}

std::string dial_words_of(const NowSet& set) {
  return set.to_reading.empty() ? "" : fmt::format(" (on its dial from {} to {})", set.from_reading, set.to_reading);
}

}  // namespace

std::string standing_words(const Followed& followed, bool inch) {
  const std::vector<Compared>& readings = followed.beside.readings;
  const Compared& most = followed.beside.most_off();
  if (followed.on_plan) {
    return fmt::format(
        "On plan: all {} readings are within what errors of reading and the scatter of the wind explain.",
        readings.size());
  }
  if (!most.beyond()) {
    return fmt::format("Off plan: each reading alone could be chance, but all together are not; most of all {}.",
                       against_plan(most, inch));
  }
  const auto beyond =
      std::count_if(readings.begin(), readings.end(), [](const Compared& each) { return each.beyond(); });
  const std::string others =
      beyond == 1 ? "" : fmt::format(" Of {} readings, {} are beyond their tolerance.", readings.size(), beyond);
  return fmt::format("Off plan: {}.{}", against_plan(most, inch), others);
}

std::string found_words(const Plan& plan, const Followed& followed) {
  if (!followed.likely) return "";
  std::string text = followed.likely->fit.text + standing_may_be(plan, followed.likely->fit);
  std::string others;
  for (const Fit& each : followed.likely->as_likely)
    others += (others.empty() ? "" : ", or because ") + differences_words(plan, each);
  if (others.empty()) return text;
  return text +
         fmt::format(" The readings would be as they are, too, because {}: they cannot tell these apart.", others);
}

std::string set_words(const Plan& plan, const NowSet& set) {
  const double more = set.to - set.from;
  const auto shown = [&](double value) { return shown_value(plan.draft(), set.path, value); };
  const std::string from_to = fmt::format("from {} to {}{}", shown(set.from), shown(set.to), dial_words_of(set));
  if (is_stop(set.path)) {
    return fmt::format("Move the {} {} {} its flange, {}.", set.words, shown(std::abs(more)),
                       more < 0.0 ? "nearer to" : "further from", from_to);
  }
  return fmt::format("Set the {} {}, {}.", set.words, more < 0.0 ? "lower" : "higher", from_to);
}

std::vector<std::string> change_words(const Plan& plan, const Followed& followed) {
  if (followed.on_plan) return {"Nothing is to be changed."};
  if (followed.change.settings.empty()) {
    if (stands_too_long(followed.likely->fit)) {
      return {
          "No change of stops or pitch makes the rest better: take the lost motion out of the drive, or the dwell "
          "out of "
          "the machine, before it goes on."};
    }
    return {
        "No change that these readings give reason for makes the rest better: leave the settings as they are, and "
        "read "
        "again at the next checkpoint."};
  }
  std::vector<std::string> words;
  for (const NowSet& each : followed.change.settings) words.push_back(set_words(plan, each));
  if (!plan.wind().steps.empty())
    words.emplace_back("Change the steps of the wind that are still to come by as much.");
  return words;
}

const char* change_caution() {
  return "Before reaching in: switch off, lock out, and wait for standstill; where fiber meets spool and guide it "
         "draws in "
         "fingers, and a broken end whips.";
}

std::string off_words(const Compared& compared, bool inch) {
  if (!compared.beyond()) return "on plan";
  const Observation& o = compared.observation;
  return fmt::format("{} too {}", with_unit(o, std::abs(compared.off()), inch),
                     compared.off() > 0.0 ? (o.is_turns ? "many" : "much") : (o.is_turns ? "few" : "little"));
}

std::string place_words(const FitModel::Place& place) {
  return fmt::format("turn {}, {}, in layer {}", figure(place.turn, 1), length_text(place.length_mm), place.layer);
}

}  // namespace laywright
