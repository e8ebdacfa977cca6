#include "web/browser/plan_desk.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

#include "desk/field_rows.h"
#include "desk/field_steps.h"
#include "plan/plan_writer.h"

namespace laywright {
namespace {

// What a person at the machine sets first. The window changes everything else.
constexpr std::array<std::string_view, 5> offered{"traverse.pitch", "traverse.left_stop", "traverse.right_stop",
                                                  "traverse.reversal.kind", "traverse.reversal.turns"};

nlohmann::json json_of(const Issue& issue) {
  return {{"error", issue.severity == Severity::error},
          {"key", issue.key},
          {"what", issue.what},
          {"allowed", issue.allowed}};
}

nlohmann::json json_of(const Issues& issues) {
  nlohmann::json all = nlohmann::json::array();
  for (const Issue& issue : issues) all.push_back(json_of(issue));
  return all;
}

nlohmann::json json_of(const FieldRow& row) {
  return {{"path", row.path},
          {"name", row.help.name},
          {"help", row.help.explanation},
          {"text", row.text},
          {"unit", row.unit == nullptr ? "" : std::string(row.unit->name)},
          {"allowed", row.allowed},
          {"choices", row.info->choices},
          {"idle", row.idle},
          {"issues", json_of(row.issues)}};
}

PlanState read(const std::string& text) {
  Result<PlanState> state = state_from_text(text, "");
  if (!state) throw std::runtime_error(state.issues().front().what);
  return std::move(state).value();
}

}  // namespace

PlanDesk::PlanDesk(std::string text) : text_(std::move(text)), original_(read(text_)), state_(original_) {}

void PlanDesk::change(const std::string& path, const std::string& typed, const Unit* unit) {
  state_ = with_text(state_, path, typed, unit);
}

nlohmann::json PlanDesk::fields(Units units) const {
  const Issues issues = issues_in(state_);
  Json rows = Json::array();
  for (const FieldRow& row : field_rows(state_, issues, units)) {
    if (std::find(offered.begin(), offered.end(), row.path) == offered.end()) continue;
    rows.push_back(json_of(row));
    rows.back()["changed"] = value_at(state_.draft, row.path) != value_at(original_.draft, row.path);
  }
  Issues others;
  std::copy_if(issues.begin(), issues.end(), std::back_inserter(others), [](const Issue& issue) {
    return std::find(offered.begin(), offered.end(), issue.key) == offered.end();
  });
  return {{"fields", std::move(rows)},
          {"others", json_of(others)},
          {"sound", !has_error(issues)},
          {"changed", !same_state(state_, original_)}};
}

std::optional<std::string> PlanDesk::stepped(const std::string& path, const std::string& typed, double steps,
                                             Units units) const {
  const std::vector<FieldRow> rows = field_rows(state_, {}, units);
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& each) { return each.path == path; });
  if (row == rows.end()) return std::nullopt;
  return laywright::stepped(*row, typed, steps, state_.draft.fiber.diameter_mm);
}

std::string PlanDesk::text() const {
  if (same_state(state_, original_)) return text_;
  return write_plan(text_, original_.draft, state_.draft);
}

}  // namespace laywright
