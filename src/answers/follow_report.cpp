#include "answers/follow_report.h"

#include <fmt/format.h>

#include "answers/follow_words.h"
#include "answers/outcome_json.h"
#include "answers/reading_text.h"
#include "base/readable.h"
#include "figures/dial_words.h"
#include "figures/figures.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

std::string readings_table(const Followed& followed) {
  std::string text =
      fmt::format("\nReadings\n  {:<30} {:>13} {:>13} {:>13}   {}\n", "", "measured", "planned", "may be off", "is");
  for (const Compared& each : followed.beside.readings) {
    const Observation& o = each.observation;
    text += fmt::format("  {:<30} {:>13} {:>13} {:>13}   {}\n", o.words(), reading_text(o, o.measured),
                        reading_text(o, each.planned), reading_text(o, each.tolerance), off_words(each));
  }
  return text;
}

std::string forecasts(const Followed& followed) {
  std::string text = "\nWhat it will be\n";
  text += paragraph(fmt::format("{}{}", followed.on_plan ? "" : "If nothing is changed: ",
                                verdict_line(followed.unchanged->verdict)),
                    2);
  if (followed.changed) {
    text += paragraph(fmt::format("With the change from here on: {}", verdict_line(followed.changed->verdict)), 2);
  }
  return text;
}

Json compared_json(const Compared& each) {
  return {{"reading", each.observation.words()},
          {"measured", each.observation.measured},
          {"planned", each.planned},
          {"scatter", each.scatter},
          {"tolerance", each.tolerance},
          {"off", each.off()},
          {"beyond", each.beyond()}};
}

Json forecast_json(const std::optional<Forecast>& forecast) {
  if (!forecast) return nullptr;
  return {{"grade", name_of(forecast->verdict.grade)},
          {"line", verdict_line(forecast->verdict)},
          {"outcome", outcome_json(forecast->outcome)}};
}

Json change_json(const Plan& plan, const Followed& followed) {
  Json all = Json::array();
  for (const NowSet& each : followed.change.settings) {
    all.push_back({{"key", each.path},
                   {"from", each.from},
                   {"to", each.to},
                   {"reading", each.to_reading.empty() ? Json(nullptr) : Json(each.to_reading)},
                   {"text", set_words(plan, each)}});
  }
  return all;
}

Json fitted_json(const Fit& fit) {
  Json all = Json::array();
  for (const Fitted& each : fit.fitted) {
    all.push_back({{"key", each.unknown.path},
                   {"planned", each.unknown.believed},
                   {"value", each.value},
                   {"low", each.low},
                   {"high", each.high}});
  }
  return all;
}

Json likely_json(const Plan& plan, const Followed& followed) {
  Json as_likely = Json::array();
  for (const Fit& each : followed.likely->as_likely) as_likely.push_back(fitted_json(each));
  return {{"text", found_words(plan, followed)},
          {"fitted", fitted_json(followed.likely->fit)},
          {"not_told_apart", followed.likely->fit.not_told_apart},
          {"as_likely", std::move(as_likely)}};
}

Json plan_json(const Plan& plan) { return {{"title", plan.title()}, {"file", plan.file()}}; }

}  // namespace

std::string follow_text(const Plan& plan, const AsWound& wound, const Followed& followed) {
  std::string text = fmt::format("{}\n  readings        {} from {}\n  the last        at {}\n\n", title_of(plan),
                                 followed.beside.readings.size(), visible(wound.file), place_words(followed.at));
  text += paragraph(standing_words(followed), 2);
  if (followed.likely) text += "\nWhat most likely is off\n" + paragraph(found_words(plan, followed), 2);
  text += "\nNow\n";
  for (const std::string& each : change_words(plan, followed)) text += paragraph(each, 2);
  if (followed.changed) text += paragraph(change_caution(), 2);
  return text + forecasts(followed) + readings_table(followed);
}

std::string follow_json(const Plan& plan, const AsWound& wound, const Followed& followed) {
  Json readings = Json::array();
  for (const Compared& each : followed.beside.readings) readings.push_back(compared_json(each));
  const Json found = followed.likely ? likely_json(plan, followed) : Json(nullptr);
  return document_text(
      {{"format", "lay-follow 1"},
       {"plan", plan_json(plan)},
       {"measured", wound.file},
       {"on_plan", followed.on_plan},
       {"chance", followed.beside.chance},
       {"text", standing_words(followed)},
       {"at",
        {{"turn", followed.at.turn}, {"length_m", followed.at.length_mm / 1000.0}, {"layer", followed.at.layer}}},
       {"readings", std::move(readings)},
       {"found", found},
       {"now", change_json(plan, followed)},
       {"unchanged", forecast_json(followed.unchanged)},
       {"changed", forecast_json(followed.changed)}});
}

std::string checklist_text(const Plan& plan, const std::vector<ChecklistRow>& rows) {
  std::string text =
      fmt::format("{}\n  Read at each of these places, and follow the wind with what was read.\n  {}\n",
                  title_of(plan), "What is within \"more or less\" is on plan.");
  for (const ChecklistRow& row : rows) {
    text += row.at.at_end ? "\nAt the end of the wind" : fmt::format("\nWhen layer {} has ended", row.at.layer);
    text += fmt::format(", at turn {}, {}", figure(row.at.turns, 1), length_text(row.at.length_mm));
    if (row.at.counter_reading) {
      text += fmt::format(", where the counter shows {}",
                          counter_shows(*row.at.counter_reading, plan.draft().machine.counter->unit));
    }
    text += fmt::format("\n  {:<16} {:>13} {:>14}\n", "", "should be", "more or less");
    for (const Compared& each : row.read) {
      const Observation& o = each.observation;
      text += fmt::format("  {:<16} {:>13} {:>14}\n", o.what, reading_text(o, each.planned),
                          reading_text(o, each.tolerance));
    }
  }
  return text + fmt::format("\n{}", paragraph(change_caution(), 2));
}

std::string checklist_json(const Plan& plan, const std::vector<ChecklistRow>& rows) {
  Json all = Json::array();
  for (const ChecklistRow& row : rows) {
    Json read = Json::array();
    for (const Compared& each : row.read) {
      read.push_back({{"what", each.observation.what}, {"planned", each.planned}, {"tolerance", each.tolerance}});
    }
    all.push_back({{"layer", row.at.layer},
                   {"at_end", row.at.at_end},
                   {"turn", row.at.turns},
                   {"length_m", row.at.length_mm / 1000.0},
                   {"counter_reading", row.at.counter_reading ? Json(*row.at.counter_reading) : Json(nullptr)},
                   {"read", std::move(read)}});
  }
  return document_text({{"format", "lay-checklist 1"}, {"plan", plan_json(plan)}, {"checkpoints", std::move(all)}});
}

}  // namespace laywright
