#include <algorithm>

#include <fmt/format.h>

#include "base/spelling.h"
#include "desk/machine_quantity.h"
#include "figures/dial_words.h"
#include "figures/figures.h"
#include "session/command_rows.h"
#include "session/window_commands.h"
#include "ui/panels.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

void row(const MachineRow& row, PanelState& state) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TextDisabled("%s", row.name.c_str());
  ImGui::TableNextColumn();
  if (!row.missing.empty()) {
    right_text("not in the plan", true);
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("Fill in %s.", row.missing.c_str());
  } else {
    right_text(row.text);
  }
  state.places.note_item(fmt::format("machine {}", row.id));
}

void readings(const std::vector<MachineRow>& rows, PanelState& state) {
  if (!ImGui::BeginTable("readings", 2, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit)) return;
  ImGui::TableSetupColumn("name");
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch);
  for (const MachineRow& r : rows) row(r, state);
  ImGui::EndTable();
}

// What is set on the machine, as the sheet has it.
void dials(const Plan& plan, const TakeupRun& run, PanelState& state) {
  const std::vector<DialWords> all = dial_words(plan);
  if (all.empty() && !run.counter.reading) return;
  ImGui::Spacing();
  ImGui::PushFont(state.strong);
  ImGui::TextUnformatted("Set on the machine");
  ImGui::PopFont();
  if (!ImGui::BeginTable("dials", 2, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit)) return;
  ImGui::TableSetupColumn("setting");
  ImGui::TableSetupColumn("reading", ImGuiTableColumnFlags_WidthStretch);
  const auto line = [&](const std::string& setting, const std::string& reading, const std::string& means) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextDisabled("%s", capitalised(setting).c_str());
    ImGui::TableNextColumn();
    right_text(reading);
    state.places.note_item("dial " + setting);
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", means.c_str());
  };
  for (const DialWords& each : all) line(each.setting, each.reading, meaning(each));
  if (run.counter.reading) {
    const auto& counter = *run.counter.reading;
    line("counter", counter_shows(counter.reading, counter.unit),
         fmt::format("The wind then ends at {} m", figure(counter.end_mm / 1e3, 1)));
  }
  ImGui::EndTable();
}

// Each key once, with what it would tell.
void keys_to_fill_in(const TakeupRun& run, const std::vector<MachineRow>& rows) {
  for (const MissingKey& missing : run.missing) {
    const bool wanted = std::any_of(rows.begin(), rows.end(), [&](const MachineRow& r) {
      return !r.missing.empty() && missing.key.find(r.missing) != std::string::npos;
    });
    if (!wanted) continue;
    ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
    wrapped_text(fmt::format("Fill in {}: it gives {}.", missing.key, missing.gives));
    ImGui::PopStyleColor();
  }
}

// A triangle for what is out of range, a ring for what is worth knowing: not a finding's square.
void sign(const MachineWarning& warning, ImU32 color) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float side = em(0.72F), top = at.y + 0.5F * (ImGui::GetTextLineHeight() - side);
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  if (warning.note) {
    canvas.AddCircle({at.x + 0.5F * side, top + 0.5F * side}, 0.42F * side, color, 0, em(0.12F));
  } else {
    canvas.AddTriangleFilled({at.x, top + side}, {at.x + 0.5F * side, top}, {at.x + side, top + side}, color);
  }
  ImGui::Dummy({side, side});
  ImGui::SameLine(0.0F, em(0.35F));
}

void warnings(const std::vector<MachineWarning>& all, Theme theme, PanelState& state) {
  ImGui::Spacing();
  ImGui::PushFont(state.strong);
  ImGui::TextUnformatted("Warnings");
  ImGui::PopFont();
  if (all.empty()) ImGui::TextWrapped("The machine can do what the plan asks, as far as the plan says.");
  for (std::size_t i = 0; i < all.size(); ++i) {
    const MachineWarning& warning = all[i];
    const ImVec4 color = warning.note ? quiet_color() : warning_color(theme);
    sign(warning, ImGui::GetColorU32(color));
    ImGui::PushStyleColor(ImGuiCol_Text, color);
    ImGui::TextUnformatted(spoken(name_of(warning.kind)).c_str());
    ImGui::PopStyleColor();
    state.places.note_item(fmt::format("machine warning {}", i));
    wrapped_text(warning.text);
  }
}

}  // namespace

void machine_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  const TakeupPtr run = wound ? wound->takeup() : nullptr;
  if (!run) {
    ImGui::TextWrapped("%s", wound ? "What the machine does is being computed."
                                   : "What the machine does stands here as soon as a plan is laid.");
    return;
  }
  const Stage& stage = *bench.stage_in_hand();
  const Moment moment = moment_of(stage.playback, *wound);
  const std::vector<MachineRow> rows = machine_rows(*wound, *run, moment, stage.view.units);
  readings(rows, state);
  dials(wound->plan(), *run, state);
  keys_to_fill_in(*run, rows);
  ImGui::Spacing();
  if (ImGui::Button("Set-up sheet...")) out.push_back(cmd::ask(cmd::Question::setup_sheet));
  state.places.note_item("machine sheet");
  if (ImGui::IsItemHovered()) {
    const Command sheet = cmd::ask(cmd::Question::setup_sheet);
    ImGui::SetTooltip("%s", with_keys("The sheet for the winder, as it will print", sheet).c_str());
  }
  warnings(run->warnings, stage.view.theme, state);
}

}  // namespace laywright
