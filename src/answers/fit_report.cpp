#include "answers/fit_report.h"

#include <fmt/format.h>

#include "advise/fit_words.h"
#include "advise/movable_setting.h"
#include "answers/outcome_json.h"
#include "answers/reading_text.h"
#include "base/quantity_text.h"
#include "base/readable.h"
#include "figures/figures.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

std::string fitted_table(const Plan& plan, const Fit& fit) {
  std::string text = fmt::format("\nMost likely\n  {:<16} {:>13} {:>13}   {:<28} {}\n", "setting", "as planned",
                                 "as wound", "95 % between", "from");
  for (const FittedLine& each : fitted_lines(plan, fit)) {
    text += fmt::format("  {:<16} {:>13} {:>13}   {:<28} {}\n", each.setting, each.planned, each.wound, each.between,
                        each.from);
  }
  return text;
}

std::string residual_table(const Fit& fit) {
  std::string text =
      fmt::format("\nReadings\n  {:<34} {:>14} {:>14} {:>12}\n", "", "measured", "model", "off, sigmas");
  for (const Residual& each : fit.residuals) {
    const Observation& o = each.observation;
    text += fmt::format("  {:<34} {:>14} {:>14} {:>12}\n", o.words(), reading_text(o, o.measured),
                        reading_text(o, each.model), signed_figure((each.model - o.measured) / o.sigma, 1));
  }
  return text;
}

std::string corrections_list(const Plan& plan, const Fit& fit) {
  if (fit.corrections.empty()) return "\nFor the next spool\n  Leave the settings as they are.\n";
  std::string text = "\nFor the next spool, so that it comes out as planned\n";
  for (const std::string& line : correction_lines(plan, fit)) text += fmt::format("  {}\n", line);
  return text;
}

}  // namespace

std::vector<FittedLine> fitted_lines(const Plan& plan, const Fit& fit) {
  std::vector<FittedLine> lines;
  for (const Fitted& each : fit.fitted) {
    const auto told = [&](double value) { return told_value(plan, each, value); };
    lines.push_back({each.unknown.words, shown_value(plan.draft(), each.unknown.path, each.unknown.believed),
                     told(each.value), fmt::format("{} and {}", told(each.low), told(each.high)),
                     each.told_by_readings ? "the readings" : "belief: the readings hardly tell",
                     each.told_by_readings});
  }
  return lines;
}

std::vector<std::string> correction_lines(const Plan& plan, const Fit& fit) {
  std::vector<std::string> lines;
  for (const Correction& each : fit.corrections)
    lines.push_back(fmt::format("{} = {}", each.path, shown_value(plan.draft(), each.path, each.set_to)));
  return lines;
}

std::string misfit_words(const Fit& fit) {
  return fmt::format("The readings are missed by {} sigmas (root mean square); about 1 is as it should be.",
                     figure(fit.misfit, 2));
}

std::string carried_words(const PlanDraft& next, const CarriedSetting& carried) {
  return fmt::format("{} = {}, before {}", carried.path, shown_value(next, carried.path, carried.after),
                     shown_value(next, carried.path, carried.before));
}

std::string fit_text(const Plan& plan, const AsWound& wound, const Fit& fit) {
  std::string text =
      fmt::format("{}\n  readings        {} from {}\n\n", title_of(plan), fit.residuals.size(), visible(wound.file));
  text += paragraph(fit.text, 2);
  text += fitted_table(plan, fit) + corrections_list(plan, fit) + residual_table(fit);
  return text + fmt::format("  {}\n", misfit_words(fit));
}

std::string fit_json(const Plan& plan, const AsWound& wound, const Fit& fit) {
  Json fitted = Json::array(), residuals = Json::array(), corrections = Json::array();
  for (const Fitted& each : fit.fitted) {
    fitted.push_back({{"key", each.unknown.path},
                      {"planned", each.unknown.believed},
                      {"value", each.value},
                      {"sigma", each.sigma},
                      {"low", each.low},
                      {"high", each.high},
                      {"told_by_readings", each.told_by_readings}});
  }
  for (const Residual& each : fit.residuals) {
    residuals.push_back({{"reading", each.observation.words()},
                         {"measured", each.observation.measured},
                         {"model", each.model},
                         {"sigma", each.observation.sigma}});
  }
  std::vector<Change> changes;
  for (const Correction& each : fit.corrections) changes.push_back({each.path, each.set_to});
  return document_text({{"format", "lay-fit 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"measured", wound.file},
                        {"text", fit.text},
                        {"fitted", std::move(fitted)},
                        {"not_told_apart", fit.not_told_apart},
                        {"next_spool", changes_json(plan.draft(), changes)},
                        {"misfit", fit.misfit},
                        {"residuals", std::move(residuals)},
                        {"trials", fit.trials}});
}

}  // namespace laywright
