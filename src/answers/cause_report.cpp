#include "answers/cause_report.h"

#include <algorithm>

#include <fmt/format.h>

#include "answers/outcome_json.h"
#include "base/quantity_text.h"
#include "figures/figures.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

std::string now_text(const MovableSetting& movable, const PlanDraft& draft, double move) {
  return shown_at(movable, draft, value_at(draft, movable.parts.front().path).value_or(0.0) + move);
}

std::string finding_line(const Finding& finding, std::size_t number) {
  std::string text = fmt::format("Finding {}: {}, {}", number, words_for(finding.kind), layers_of(finding));
  if (finding.side) text += fmt::format(", {} flange", name_of(*finding.side));
  text += fmt::format(", x {} to {} mm: {} at most, {}", figure(finding.x_mm[0], 1), figure(finding.x_mm[1], 1),
                      in_mm(finding.size_mm), counted(finding.occurrences, "place"));
  return text + '\n';
}

// A direction of a setting in a line.
std::string tried_line(const TriedDial& tried, const PlanDraft& draft) {
  return fmt::format("  {:<30} {:>12} {:>12} {:>12} {:>10} {:>10}\n", tried.movable.words,
                     now_text(tried.movable, draft, 0.0), now_text(tried.movable, draft, tried.furthest),
                     now_text(tried.movable, draft, tried.best), percent_text(tried.share_left, 0),
                     percent_text(tried.share_of_all, 0));
}

std::string tried_table(const Explanation& explanation, const PlanDraft& draft) {
  if (explanation.tried.empty()) return "";
  std::string text = fmt::format(
      "\nTried, one at a time, on the first {}\n  {:<30} {:>12} {:>12} {:>12} {:>10} {:>10}\n",
      counted(explanation.layers_tried, "layer"), "setting", "from", "to", "best at", "left of it", "of all");
  for (const TriedDial& tried : explanation.tried) text += tried_line(tried, draft);
  return text;
}

}  // namespace

std::string cause_text(const Plan& plan, const Explanation& explanation, std::size_t number) {
  std::string text = title_of(plan) + '\n' + finding_line(explanation.finding, number);
  text += "\nCause\n" + paragraph(explanation.text, 2);
  if (explanation.remedies.size() > 1) {
    text += "\nWhat else would do\n";
    for (std::size_t i = 1; i < explanation.remedies.size(); ++i) {
      text += paragraph(explanation.remedies[i].text, 2);
    }
  }
  text += tried_table(explanation, plan.draft());
  text += '\n' +
          paragraph(
              fmt::format("{} builds were laid{}. Each setting is seen on several draws: winds that differ by less "
                          "than can be set, since a wind is sensitive. Places are counted in the same part "
                          "of the width; shares weigh each place by the square of its size.",
                          explanation.trials, explanation.pairs_tried ? ", pairs of settings among them" : ""),
              0);
  return text;
}

std::string cause_json(const Plan& plan, const Explanation& explanation, std::size_t number) {
  const auto amount = [](const FindingAmount& a) -> Json {
    return {{"places", a.places}, {"worst", a.worst_mm}, {"gravity", a.gravity}};
  };
  Json remedies = Json::array(), tried = Json::array();
  for (const Remedy& remedy : explanation.remedies) {
    remedies.push_back({{"can_be_set", remedy.can_be_set()},
                        {"set", changes_json(plan.draft(), remedy.changes)},
                        {"offered", remedy.is_offered()},
                        {"grade", name_of(remedy.verdict.grade)},
                        {"reason", remedy.verdict.reason},
                        {"share_left", remedy.rest.share_left},
                        {"share_of_all_findings", remedy.rest.share_of_all},
                        {"after", amount(remedy.rest.amount)},
                        {"text", remedy.text},
                        {"outcome", outcome_json(remedy.outcome)}});
  }
  for (const TriedDial& each : explanation.tried) {
    tried.push_back({{"setting", each.movable.words},
                     {"key", each.movable.parts.front().path},
                     {"from", now_text(each.movable, plan.draft(), 0.0)},
                     {"to", now_text(each.movable, plan.draft(), each.furthest)},
                     {"best", now_text(each.movable, plan.draft(), each.best)},
                     {"share_left", each.share_left},
                     {"share_of_all_findings", each.share_of_all}});
  }
  const Finding& finding = explanation.finding;
  return document_text({{"format", "lay-cause 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"finding",
                         {{"number", number},
                          {"kind", name_of(finding.kind)},
                          {"side", finding.side ? Json(name_of(*finding.side)) : Json(nullptr)},
                          {"layer", finding.layer},
                          {"last_layer", finding.last_layer},
                          {"text", finding.text}}},
                        {"before", amount(explanation.before)},
                        {"outcome", outcome_json(explanation.outcome)},
                        {"grade", name_of(explanation.verdict.grade)},
                        {"text", explanation.text},
                        {"remedies", std::move(remedies)},
                        {"tried", std::move(tried)},
                        {"trials", explanation.trials}});
}

}  // namespace laywright
