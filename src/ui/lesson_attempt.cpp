// The step of a lesson in which a setting is changed.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/spelling.h"
#include "desk/field_steps.h"
#include "lesson/figures.h"
#include "lesson/slide.h"
#include "session/lesson_commands.h"
#include "session/plan_commands.h"
#include "ui/lesson_parts.h"
#include "ui/plan_field.h"
#include "ui/style.h"

namespace laywright {
namespace {

const FieldRow* row_of(const Workbench& bench) {
  const std::string& key = bench.lesson()->now().attempt->key;
  const auto& rows = bench.rows();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& row) { return row.path == key; });
  return found == rows.end() ? nullptr : &*found;
}

double fiber_of(const Workbench& bench) { return bench.active()->document->state().draft.fiber.diameter_mm; }

Slide slide_of(const Workbench& bench, const FieldRow& row) {
  const Attempt& attempt = *bench.lesson()->now().attempt;
  const WoundPtr& told = bench.lesson()->as_given[static_cast<std::size_t>(attempt.in)];
  const PlanDraft& draft = told ? told->plan().draft() : bench.active()->document->state().draft;
  const PlanState solved = with_text(PlanState{draft, {}, {}}, attempt.key, attempt.solution);
  const double good = value_at(solved.draft, attempt.key).value_or(0.0);
  return slide_between(value_at(draft, attempt.key).value_or(good), good, row.info->range.low, row.info->range.high);
}

void slider(const Workbench& bench, const FieldRow& row, PanelState& state, Commands& out) {
  const Slide slide = slide_of(bench, row);
  double value = row.value && std::isfinite(*row.value) ? *row.value : slide.high;
  ImGui::SetNextItemWidth(-1.0F);
  const bool moved = ImGui::SliderScalar("##slide", ImGuiDataType_Double, &value, &slide.low, &slide.high, "",
                                         ImGuiSliderFlags_NoInput | ImGuiSliderFlags_AlwaysClamp);
  state.places.note_item("lesson slider");
  if (ImGui::IsItemActivated()) ++state.gestures;
  if (!moved) return;
  const double next = on_step(slide, value);
  if (row.value != next) out.push_back(cmd::set_field(row.path, next, state.gestures));
}

void choices(const FieldRow& row, PanelState& state, Commands& out) {
  for (std::size_t i = 0; i < row.info->choices.size(); ++i) {
    if (i > 0) ImGui::SameLine(0.0F, em(1.2F));
    const bool chosen = row.value == static_cast<double>(i);
    if (ImGui::RadioButton(row.info->choices[i].c_str(), chosen) && !chosen) {
      out.push_back(cmd::set_field(row.path, static_cast<double>(i), 0));
    }
    state.places.note_item(fmt::format("lesson choice {}", i));
  }
}

void put_right(const Workbench& bench, const FieldRow& row, PanelState& state, Commands& out) {
  ImGui::PushFont(state.reading_strong);
  ImGui::TextUnformatted(capitalised(std::string(row.help.name)).c_str());
  ImGui::PopFont();
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", std::string(row.help.explanation).c_str());
  ImGui::PushFont(state.reading);
  if (row.info->kind == FieldKind::choice) {
    choices(row, state, out);
  } else {
    ImGui::SetNextItemWidth(em(7.0F));
    text_field(*bench.active(), row, fiber_of(bench), state, out);
    state.places.note_item("lesson field");
    step_buttons(*bench.active(), row, fiber_of(bench), state, out);
    if (row.unit != nullptr) ImGui::SameLine(0.0F, em(0.4F));
    if (row.unit != nullptr) ImGui::TextDisabled("%s", std::string(row.unit->name).c_str());
    slider(bench, row, state, out);
  }
  ImGui::PopFont();
  for (const Issue& issue : row.issues) {
    ImGui::PushStyleColor(ImGuiCol_Text, error_color(bench.active()->stage.view.theme));
    ImGui::TextWrapped("%s", issue.what.c_str());
    ImGui::PopStyleColor();
  }
}

void large_figure(const char* name, const std::string& figure, bool quiet, const PanelState& state) {
  ImGui::BeginGroup();
  ImGui::TextDisabled("%s", name);
  ImGui::PushFont(state.title);
  quiet ? ImGui::TextDisabled("%s", figure.c_str()) : ImGui::TextUnformatted(figure.c_str());
  ImGui::PopFont();
  ImGui::EndGroup();
}

std::string goal_words(const Claim& goal, const FigureKind& kind, bool inch) {
  const char* is = goal.is == Relation::above ? "above" : goal.is == Relation::below ? "below" : "about";
  if (goal.than) {
    return fmt::format("Goal: {} that of the {} spool", is, *goal.than == Which::first ? "first" : "second");
  }
  const bool exact = kind.dimension == Dimension::length && !inch && std::abs(goal.value) < 1000.0;
  return fmt::format("Goal: {} {}", is,
                     exact ? short_size_text(goal.value, 3, false) : figure_text(kind, goal.value, inch));
}

void outcome(const Workbench& bench, PanelState& state) {
  const Attempt& attempt = *bench.lesson()->now().attempt;
  const FigureKind kind = figure_kind(attempt.figure).value_or(FigureKind{});
  const bool inch = bench.active()->stage.view.units == Units::inch;
  const std::optional<Tried> tried = bench.tried();
  const auto words = [&](const std::optional<double>& value) {
    return value ? figure_text(kind, *value, inch) : std::string("...");
  };
  ImGui::PushFont(state.reading_strong);
  ImGui::TextUnformatted(capitalised(kind.label).c_str());
  ImGui::PopFont();
  large_figure("Before", tried ? words(tried->before) : "...", true, state);
  ImGui::SameLine(0.5F * ImGui::GetContentRegionMax().x);
  large_figure("Now", tried ? words(tried->now) : "...", !tried || !tried->settled, state);
  ImGui::Dummy({1.0F, em(0.2F)});
  const std::string goal = goal_words(attempt.goal, kind, inch);
  if (tried && tried->reached) {
    signed_words(Sign::right, goal + ". Reached.", state);
  } else {
    reading_text(goal + (tried && tried->settled ? ". Not yet." : ". Being laid..."), state);
  }
}

}  // namespace

void attempt_part(const Workbench& bench, PanelState& state, Commands& out) {
  const FieldRow* row = row_of(bench);
  if (row == nullptr) return;
  put_right(bench, *row, state, out);
  ImGui::Dummy({1.0F, em(0.4F)});
  outcome(bench, state);
  ImGui::Dummy({1.0F, em(0.2F)});
  ImGui::BeginDisabled(bench.active()->document->as_given());
  if (ImGui::Button("As it was")) out.push_back(cmd::take_try_back());
  ImGui::EndDisabled();
  state.places.note_item("lesson take back");
}

void step_attempt(const Workbench& bench, double way, PanelState& state, Commands& out) {
  const FieldRow* row = row_of(bench);
  if (row == nullptr || !row->value) return;
  if (row->info->kind == FieldKind::choice) {
    const auto count = static_cast<double>(row->info->choices.size());
    const double next = std::clamp(*row->value + way, 0.0, count - 1.0);
    if (next != *row->value) out.push_back(cmd::set_field(row->path, next, 0));
    return;
  }
  const Slide slide = slide_of(bench, *row);
  const double next = stepped(slide, *row->value, way);  // of a fiber that never slides there is only the way down
  if (!row->info->range.holds(next)) return;
  out.push_back(cmd::set_field(row->path, next, ++state.gestures));
}

}  // namespace laywright
