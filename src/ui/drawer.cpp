#include "ui/drawer.h"

#include <algorithm>

#include <fmt/format.h>

#include "ui/focus.h"
#include "ui/layout.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

float handle_height() { return em(0.5F); }

// Dragging the upper edge makes the drawer higher or lower.
void handle(PanelState& state, float height) {
  ImGui::InvisibleButton("drawer edge", {std::max(1.0F, ImGui::GetContentRegionAvail().x), handle_height()});
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  const float y = 0.5F * (low.y + high.y);
  const bool hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
  ImGui::GetWindowDrawList()->AddLine(
      {low.x, y}, {high.x, y}, ImGui::GetColorU32(hot ? ImGuiCol_CheckMark : ImGuiCol_Border), hot ? 2.0F : 1.0F);
  if (hot) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeNS);
  if (ImGui::IsItemActive()) state.drawer_height = (height - ImGui::GetIO().MouseDelta.y) / em(1.0F);
}

// Short where the tabs need the room.
const char* button_words(bool open) {
  if (ImGui::GetWindowWidth() < em(36.0F)) return open ? "Close" : "Open";
  return open ? "Close the drawer" : "Open the drawer";
}

}  // namespace

float drawer_height(const Workbench& bench, float available, const PanelState& state) {
  if (!bench.wound() || bench.lesson()) return 0.0F;
  const float tabs = ImGui::GetFrameHeight() + handle_height() + em(0.8F);
  if (!state.drawer_open || available < em(26.0F)) return tabs;
  const float wanted = state.drawer_height > 0.0F ? em(state.drawer_height) : 0.32F * available;
  return std::clamp(wanted, tabs + em(4.0F), std::max(tabs + em(4.0F), available - em(14.0F)));
}

void draw_drawer(const Workbench& bench, const Shown& shown, PanelState& state, Commands& out) {
  if (!bench.wound() || bench.lesson()) return;
  // What differs is what one wants to know first.
  if (bench.comparison() && !state.compared) state.wanted_tab = "Comparison";
  state.compared = bench.comparison().has_value();
  handle(state, ImGui::GetContentRegionAvail().y);
  ImGui::PushStyleColor(ImGuiCol_ChildBg, ImGui::GetStyleColorVec4(ImGuiCol_WindowBg));
  ImGui::BeginChild("drawer", {0.0F, 0.0F}, false);
  ImGui::PopStyleColor();
  if (ImGui::BeginTabBar("drawers")) {
    const auto tab = [&](const char* name, auto panel) {
      const bool wanted = state.wanted_tab == name || was_in_front(state, name);
      if (state.wanted_tab == name) state.wanted_tab.clear();
      const bool open = ImGui::BeginTabItem(name, nullptr, wanted ? ImGuiTabItemFlags_SetSelected : 0);
      state.places.note_item(fmt::format("tab {}", name));
      if (ImGui::IsItemClicked()) state.drawer_open = true;
      if (!open) return;
      state.focus.open_tabs.emplace_back(name);
      if (!is_drawing(name) || state.focus.controls) take_keys_here(name, false, state);
      if (ImGui::GetContentRegionAvail().y > em(2.0F)) panel();
      ImGui::EndTabItem();
    };
    tab("Section", [&] { section_panel(bench, state, out); });
    tab("Map", [&] { map_panel(bench, shown, state, out); });
    tab("Layers", [&] { layers_panel(bench, state, out); });
    tab("Curves", [&] { curves_panel(bench, state, out); });
    tab("Pattern", [&] { pattern_panel(bench, state, out); });
    tab("Follow", [&] { follow_panel(bench, state, out); });
    tab("Study", [&] { study_panel(bench, state, out); });
    if (bench.comparison()) tab("Comparison", [&] { comparison_panel(bench, state, out); });
    if (ImGui::TabItemButton(button_words(state.drawer_open), ImGuiTabItemFlags_Trailing)) {
      state.drawer_open = !state.drawer_open;
    }
    state.places.note_item("drawer button");
    ImGui::EndTabBar();
  }
  ImGui::EndChild();
}

}  // namespace laywright
