// What a recorded spool was wound with, and what the plan in hand gets of it.
#include <algorithm>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "answers/fit_report.h"
#include "answers/stations_words.h"
#include "base/readable.h"
#include "jobs/trouble.h"
#include "session/records_commands.h"
#include "ui/advice_parts.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

void fitted_table(const RecordFit& found) {
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit |
                                    ImGuiTableFlags_BordersInnerV | ImGuiTableFlags_NoHostExtendX;
  if (!ImGui::BeginTable("fitted", 4, flags)) return;
  const std::vector<const char*> heads{"setting", "as planned", "as wound", "95 % between"};
  for (const char* head : heads)
    ImGui::TableSetupColumn(head, 0, em(head == heads.back() ? 11.5F : head == heads.front() ? 7.5F : 6.0F));
  table_heads(heads, 1, {"Grey: the readings hardly tell; what was believed before stands", "", "", ""});
  for (const FittedLine& line : fitted_lines(found.plan, found.fit)) {
    const bool quiet = !line.told_by_readings;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    quiet ? ImGui::TextDisabled("%s", line.setting.c_str()) : ImGui::TextUnformatted(line.setting.c_str());
    for (const std::string* cell : {&line.planned, &line.wound, &line.between}) {
      ImGui::TableNextColumn();
      right_text(*cell, quiet);
    }
  }
  ImGui::EndTable();
}

void next_plan(const Workbench& bench, const RecordFit& found, PanelState& state, Commands& out) {
  heading("For the next spool", state);
  if (found.fit.corrections.empty()) return wrapped_text("Leave the settings as they are.");
  for (const std::string& line : correction_lines(found.plan, found.fit)) wrapped_text(line);
  if (bench.active() == nullptr)
    return coloured(quiet_color(), "Open the plan that is wound next (Ctrl+O), and this is carried into it.");
  ImGui::Spacing();
  const std::string title = bench.active()->document->title();
  if (is_carried(bench)) {
    coloured(quiet_color(), fmt::format("\"{}\" has it; Ctrl+Z takes it back.", title));
    state.places.note_item("records is carried");
    return;
  }
  PlanDraft next;
  const std::vector<CarriedSetting> carried = would_carry(bench, &next);
  if (!carried.empty()) coloured(quiet_color(), fmt::format("Into \"{}\", which is open:", title));
  for (const CarriedSetting& each : carried) wrapped_text(carried_words(next, each));
  command_button(bench, "Carry into the next plan", cmd::carry_fit(),
                 "The open plan gets these settings; one undo takes them back.", out);
  state.places.note_item("records carry");
}

void found_part(const Workbench& bench, const RecordFit& found, PanelState& state, Commands& out) {
  ImGui::BeginGroup();
  wrapped_text(found.fit.text);
  ImGui::EndGroup();
  state.places.note_item("records found");
  fitted_table(found);
  coloured(quiet_color(), misfit_words(found.fit));
  if (!found.not_kept.empty())
    coloured(warning_color(theme_of(bench)),
             fmt::format("The fit does not stand with the record: {}", trouble_words(found.not_kept)));
  ImGui::Spacing();
  next_plan(bench, found, state, out);
}

}  // namespace

void record_fit_part(const Workbench& bench, PanelState& state, Commands& out) {
  const RecordsDesk& records = bench.records();
  const long long number = records.looked_at().number;
  const bool of_this = records.fitted_number() == number;
  heading("What it was wound with", state);
  if (!(of_this && records.fitting().busy)) {
    command_button(
        bench, "Fit this spool", cmd::fit_record(state.records.by),
        fmt::format("Finds the settings that explain the readings best. {} The fit is kept with the record.",
                    stations_words(fitted_fidelity, "Its winds")),
        out);
    state.places.note_item("records fit");
    ImGui::SameLine();
    ImGui::SetNextItemWidth(std::min(em(12.0F), ImGui::GetContentRegionAvail().x));
    ImGui::InputTextWithHint("##by", "by whom, or nothing", &state.records.by);
    state.places.note_item("records fit by");
  }
  if (!of_this) return;
  inquiry_line(records.fitting(), theme_of(bench), "Fitting", "records fit", cmd::stop_fitting(), state, out);
  const auto& found = records.found();
  if (found && found->number == number && found->place == records.looked_at().place)
    found_part(bench, *found, state, out);
}

}  // namespace laywright
