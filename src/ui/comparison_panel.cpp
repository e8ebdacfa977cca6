#include "session/compare_commands.h"
#include "ui/focus.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

void rows(const char* title, const std::vector<DifferenceRow>& rows, const PanelState& state) {
  if (rows.empty()) return;
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::PushFont(state.strong);
  ImGui::TextUnformatted(title);
  ImGui::PopFont();
  for (const DifferenceRow& r : rows) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(r.name.c_str());
    for (const std::string* text : {&r.first, &r.second, &r.difference}) {
      ImGui::TableNextColumn();
      right_text(*text, text == &r.difference && r.sign == 0);
    }
  }
}

}  // namespace

void comparison_panel(const Workbench& bench, PanelState& state, Commands& out) {
  bool linked = bench.comparison()->linked;
  if (ImGui::Checkbox("One camera and scrubber for both", &linked)) out.push_back(cmd::toggle_linked());
  ImGui::SameLine();
  if (ImGui::SmallButton("Stop comparing")) out.push_back(cmd::stop_comparing());
  const std::optional<DifferenceTable> table = bench.difference();
  if (!table) {
    ImGui::TextWrapped("The differences stand here as soon as both are laid.");
    return;
  }
  constexpr ImGuiTableFlags flags =
      ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_SizingStretchProp;
  if (!ImGui::BeginTable("differences", 4, flags, ImGui::GetContentRegionAvail())) return;
  take_keys_here("Comparison", true, state);
  ImGui::TableSetupScrollFreeze(0, 1);
  const std::vector<const char*> names{"", "Left", "Right", "Right minus left"};
  for (const char* name : names) ImGui::TableSetupColumn(name);
  table_heads(names, 1);
  rows("Settings", table->settings, state);
  rows("Totals", table->totals, state);
  rows("Findings", table->findings, state);
  ImGui::EndTable();
  state.places.note_item("differences");
}

}  // namespace laywright
