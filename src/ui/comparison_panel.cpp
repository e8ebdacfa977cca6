#include "ui/drawer_panels.h"
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
    for (const std::string* text : {&r.name, &r.first, &r.second, &r.difference}) {
      ImGui::TableNextColumn();
      const bool same = text == &r.difference && r.sign == 0;
      same ? ImGui::TextDisabled("%s", text->c_str()) : ImGui::TextUnformatted(text->c_str());
    }
  }
}

}  // namespace

void comparison_panel(const Workbench& bench, PanelState& state, Commands& out) {
  bool linked = bench.comparison()->linked;
  if (ImGui::Checkbox("One camera and scrubber for both", &linked)) out.push_back(cmd::ToggleLinked{});
  ImGui::SameLine();
  if (ImGui::SmallButton("Stop comparing")) out.push_back(cmd::StopComparing{});
  const std::optional<DifferenceTable> table = bench.difference();
  if (!table) {
    ImGui::TextDisabled("The differences stand here as soon as both are laid.");
    return;
  }
  constexpr ImGuiTableFlags flags =
      ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_SizingStretchProp;
  if (!ImGui::BeginTable("differences", 4, flags, ImGui::GetContentRegionAvail())) return;
  ImGui::TableSetupScrollFreeze(0, 1);
  for (const char* name : {"", "Left", "Right", "Right minus left"}) ImGui::TableSetupColumn(name);
  ImGui::TableHeadersRow();
  rows("Settings", table->settings, state);
  rows("Totals", table->totals, state);
  rows("Findings", table->findings, state);
  ImGui::EndTable();
  state.places.note_item("differences");
}

}  // namespace laywright
