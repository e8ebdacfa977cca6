#include "app/desktop_advice.h"

#include "answers/follow_words.h"

#include "session/advice.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json status_of(const Workbench& bench, AdviceKind kind) {
  const InquiryStatus status = bench.active()->advice->status(kind);
  const std::optional<Standing> standing = bench.standing(kind);
  return {{"busy", status.busy},
          {"share", status.share},
          {"stopped", status.stopped},
          {"trouble", status.trouble},
          {"stale", standing && standing->stale},
          {"set", standing && standing->set ? Json(*standing->set) : Json(nullptr)}};
}

Json cause_of(const Workbench& bench) {
  Json all = status_of(bench, AdviceKind::cause);
  const auto& answer = bench.active()->advice->cause();
  if (!answer) return all;
  all["text"] = answer->explanation.text;
  all["finding"] = answer->finding;
  all["remedies"] = Json::array();
  for (const Remedy& remedy : answer->explanation.remedies) {
    Json changes = Json::object();
    for (const Change& change : remedy.changes) changes[change.path] = change.value;
    all["remedies"].push_back({{"text", remedy.text}, {"set", std::move(changes)}});
  }
  return all;
}

Json better_of(const Workbench& bench) {
  Json all = status_of(bench, AdviceKind::better);
  const auto& answer = bench.active()->advice->better();
  if (!answer) return all;
  all["text"] = answer->improvement.text;
  all["keys"] = Json::array();
  for (const SearchableSetting& searchable : answer->improvement.searchables) all["keys"].push_back(searchable.path);
  all["proposals"] = Json::array();
  for (const Proposal& each : answer->improvement.best) {
    all["proposals"].push_back({{"text", each.text}, {"values", each.values}});
  }
  return all;
}

Json study_of(const Workbench& bench, const StudyState& state) {
  Json all = status_of(bench, AdviceKind::study);
  all["figure"] = state.figure;
  const auto& answer = bench.active()->advice->study();
  if (!answer) return all;
  all["axes"] = Json::array();
  for (const StudyAxis& axis : answer->study.spec.axes) {
    all["axes"].push_back({{"path", axis.path}, {"count", axis.count}});
  }
  const std::size_t figure = Study::figure(state.figure);
  all["rows"] = Json::array();
  for (const StudyRow& row : answer->study.rows) {
    all["rows"].push_back(
        {{"values", row.values}, {"figure", row.figures.empty() ? Json(nullptr) : Json(row.figures[figure])}});
  }
  return all;
}

Json follow_of(const Workbench& bench) {
  Json all = status_of(bench, AdviceKind::follow);
  const auto& answer = bench.active()->advice->follow();
  if (!answer) return all;
  all["on_plan"] = answer->followed.on_plan;
  all["now"] = change_words(answer->of.plan, answer->followed);
  return all;
}

Json draws_of(const Workbench& bench) {
  Json all = status_of(bench, AdviceKind::draws);
  if (const auto& answer = bench.active()->advice->draws()) all["line"] = verdict_line(*answer->verdict);
  return all;
}

}  // namespace

Json advice_json(const Workbench& bench, const PanelState& panels) {
  return {{"cause", cause_of(bench)},
          {"better", better_of(bench)},
          {"study", study_of(bench, panels.study)},
          {"draws", draws_of(bench)},
          {"follow", follow_of(bench)}};
}

}  // namespace laywright
