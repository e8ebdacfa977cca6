#include <algorithm>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "base/quantity_text.h"
#include "session/advice.h"
#include "session/advice_commands.h"
#include "session/study_request.h"
#include "ui/advice_parts.h"
#include "ui/focus.h"
#include "ui/panels.h"
#include "ui/study_map.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr AdviceKind study_kind = AdviceKind::study;
constexpr int least_values = 2, most_values = 60;

const FieldRow* row_at(const std::vector<FieldRow>& rows, const std::string& path) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& row) { return row.path == path; });
  return found == rows.end() ? nullptr : &*found;
}

// Both stops: what a person who sets up a wind turns first.
void begin_anew(const Workbench& bench, StudyState& study) {
  const Desk& desk = *bench.active();
  study.desk = desk.id;
  study.request = {};
  study.sets_up = false;
  study.cursor = 0;
  for (const char* path : {"traverse.left_stop", "traverse.right_stop"}) {
    const FieldRow* row = row_at(bench.rows(), path);
    if (row != nullptr && row->value)
      study.request.axes.push_back(suggested_axis(desk.document->state().draft, *row));
  }
}

void choose_key(const Workbench& bench, std::size_t place, PanelState& state) {
  std::vector<StudyAxisRequest>& axes = state.study.request.axes;
  const FieldRow* now = place < axes.size() ? row_at(bench.rows(), axes[place].path) : nullptr;
  ImGui::SetNextItemWidth(-1.0F);
  const bool open = ImGui::BeginCombo("##key", now != nullptr ? key_words(*now).c_str() : "none: a curve",
                                      ImGuiComboFlags_HeightLarge);
  state.places.note_item(fmt::format("study key {}", place));
  if (!open) return;
  if (place == 1) {
    if (ImGui::Selectable("none: a curve", now == nullptr)) axes.resize(1);
    state.places.note_item("study none");
  }
  for (const std::size_t i : study_keys(bench.rows())) {
    const FieldRow& row = bench.rows()[i];
    if (ImGui::Selectable(key_words(row).c_str(), &row == now)) {
      axes.resize(std::max(axes.size(), place + 1));
      const int count = axes[place].path.empty() ? StudyAxisRequest{}.count : axes[place].count;
      axes[place] = suggested_axis(bench.active()->document->state().draft, row);
      axes[place].count = count;
    }
    state.places.note_item(fmt::format("study choice {}", row.path));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", std::string(row.help.explanation).c_str());
  }
  ImGui::EndCombo();
}

void range(const Workbench& bench, std::size_t place, PanelState& state) {
  StudyAxisRequest& axis = state.study.request.axes[place];
  const FieldRow* row = row_at(bench.rows(), axis.path);
  const float end = em(4.2F);
  ImGui::SetNextItemWidth(end);
  ImGui::InputText("##from", &axis.from);
  state.places.note_item(fmt::format("study from {}", place));
  ImGui::SameLine(0.0F, em(0.35F));
  ImGui::TextDisabled("to");
  ImGui::SameLine(0.0F, em(0.35F));
  ImGui::SetNextItemWidth(end);
  ImGui::InputText("##to", &axis.to);
  state.places.note_item(fmt::format("study to {}", place));
  ImGui::SameLine(0.0F, em(0.35F));
  ImGui::TextDisabled("%s,", row == nullptr || row->unit == nullptr ? "" : std::string(row->unit->name).c_str());
  ImGui::SameLine(0.0F, em(0.35F));
  ImGui::SetNextItemWidth(em(2.6F));
  if (ImGui::InputInt("##count", &axis.count, 0)) axis.count = std::clamp(axis.count, least_values, most_values);
  state.places.note_item(fmt::format("study count {}", place));
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Values, both ends among them: %d to %d", least_values, most_values);
  ImGui::SameLine(0.0F, em(0.35F));
  ImGui::TextDisabled("values");
}

void request_panel(const Workbench& bench, PanelState& state, Commands& out) {
  StudyState& study = state.study;
  const char* names[] = {"To the right", "Upward"};
  for (std::size_t place = 0; place < 2; ++place) {
    ImGui::PushID(static_cast<int>(place));
    ImGui::TextDisabled("%s", names[place]);
    choose_key(bench, place, state);
    if (place < study.request.axes.size()) range(bench, place, state);
    ImGui::PopID();
  }
  ImGui::Checkbox("As fine as the build", &study.request.fine);
  state.places.note_item("study fine");
  if (ImGui::IsItemHovered()) {
    ImGui::SetTooltip(
        "With all stations; else half of them, in half the time: diameters stay within 0.1 %%,\n"
        "but a verdict near a limit may differ from that of the build.");
  }
  const InquiryStatus status = bench.active()->advice->status(study_kind);
  std::size_t builds = 1;
  for (const StudyAxisRequest& axis : study.request.axes) builds *= static_cast<std::size_t>(axis.count);
  if (!status.busy) {
    const Command run = cmd::run_study(study.request);
    const std::string reason = bench.why_not(run);
    if (command_button(bench, fmt::format("Lay {} builds", builds).c_str(), run, "", out)) study.sets_up = false;
    state.places.note_item("study run");
    if (!reason.empty()) {
      ImGui::PushStyleColor(ImGuiCol_Text, error_color(bench.active()->stage.view.theme));
      wrapped_text(reason);
      ImGui::PopStyleColor();
    }
  }
  inquiry_line(bench, study_kind, "Laying", "study", state, out);
}

const OutcomeFigure& chosen_figure(const StudyState& study) {
  const OutcomeFigure* figure = find_outcome_figure(study.figure);
  return figure != nullptr ? *figure : outcome_figures().front();
}

void choose_figure(const Workbench& bench, PanelState& state) {
  const Units units = bench.active()->stage.view.units;
  const OutcomeFigure& now = chosen_figure(state.study);
  ImGui::SetNextItemWidth(em(15.0F));
  const bool open = ImGui::BeginCombo("##figure", figure_heading(now, units).c_str(), ImGuiComboFlags_HeightLarge);
  state.places.note_item("study figure");
  if (!open) return;
  for (const OutcomeFigure& figure : outcome_figures()) {
    if (ImGui::Selectable(figure_heading(figure, units).c_str(), &figure == &now)) state.study.figure = figure.key;
    state.places.note_item(fmt::format("study figure {}", figure.key));
  }
  ImGui::EndCombo();
}

void picture_panel(const Workbench& bench, bool alone, PanelState& state, Commands& out) {
  const std::shared_ptr<const StudyAnswer>& answer = bench.active()->advice->study();
  if (!answer) {
    wrapped_text(
        "Choose one or two settings, and lay the builds: a map or a curve shows what comes of each, and a click "
        "sets the "
        "plan so.");
    return;
  }
  choose_figure(bench, state);
  if (answer->study.spec.lay.fidelity < 1.0) {
    ImGui::SameLine();
    ImGui::TextDisabled("%s of the stations", percent_text(answer->study.spec.lay.fidelity, 0).c_str());
    if (ImGui::IsItemHovered())
      ImGui::SetTooltip(
          "A verdict near a limit may differ from that of the build itself.\n"
          "As fine as the build, in the settings, lays all.");
  }
  if (alone) {
    ImGui::SameLine();
    if (ImGui::Button("Settings...")) state.study.sets_up = true;
    state.places.note_item("study settings");
  }
  stale_line(bench, study_kind, "study", state);
  const StudyPicture picture{bench, *answer, chosen_figure(state.study), bench.standing(study_kind)->stale,
                             drawing_has_keys("Study", state)};
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const bool map = answer->study.spec.axes.size() == 2;
  const std::optional<std::size_t> chosen =
      map ? study_map(picture, room, state) : study_curve(picture, room, state);
  if (!chosen) return;
  state.study.cursor = *chosen;
  // A build that the plan is set to already is what was wanted.
  if (bench.standing(study_kind)->set != chosen) out.push_back(cmd::set_advised(study_kind, *chosen, false));
}

}  // namespace

void study_panel(const Workbench& bench, PanelState& state, Commands& out) {
  StudyState& study = state.study;
  if (study.desk != bench.active()->id) begin_anew(bench, study);
  const bool answered = bench.active()->advice->study() != nullptr;
  // Where nothing is drawn, the keyboard is for what is asked.
  if (!answered && state.focus.panel == "Study" && !state.focus.controls) state.focus.controls = true;
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const bool both = room.x >= em(37.0F);
  const bool request = both || !answered || study.sets_up || bench.active()->advice->status(study_kind).busy;
  if (request) {
    ImGui::BeginChild("request", {both ? em(19.0F) : 0.0F, 0.0F});
    if (state.focus.controls) take_keys_here("Study", false, state);
    request_panel(bench, state, out);
    if (!both && answered && study.sets_up && ImGui::Button("Back to the map")) study.sets_up = false;
    ImGui::EndChild();
  }
  if (both) ImGui::SameLine(0.0F, em(1.2F));
  if (!both && request) return;
  ImGui::BeginChild("study picture", {0.0F, 0.0F}, false,
                    ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
  picture_panel(bench, !both, state, out);
  ImGui::EndChild();
}

}  // namespace laywright
