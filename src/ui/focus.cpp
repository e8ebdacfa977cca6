#include "ui/focus.h"

#include <algorithm>

// The focus of the keyboard is set from within Dear ImGui's own header; it has no public call for a window's first item.
#include <imgui_internal.h>

#include "ui/style.h"

namespace laywright {
namespace {

bool is_due(std::string_view panel, const PanelState& state) {
  return state.focus.enters && state.focus.panel == panel;
}

void show_focus() {
  ImGuiContext& g = *ImGui::GetCurrentContext();
  g.NavDisableHighlight = false;
  g.NavDisableMouseHover = true;
  g.NavMousePosDirty = false;
}

}  // namespace

bool is_drawing(std::string_view panel) { return panel == "Section" || panel == "Map" || panel == "Study"; }

void go_to_panel(std::string_view panel, PanelState& state) {
  FocusState& focus = state.focus;
  focus.controls = focus.panel == panel && !focus.controls;
  focus.panel = panel;
  focus.enters = true;
  if (panel != "messages") state.wanted_tab = panel;
  ImGui::ClearActiveID();
}

void go_to_picture(PanelState& state) {
  state.focus.panel.clear();
  state.focus.enters = state.focus.controls = false;
  ImGui::ClearActiveID();
}

bool drawing_has_keys(std::string_view panel, const PanelState& state) {
  return is_drawing(panel) && state.focus.panel == panel && !state.focus.controls;
}

void take_keys_here(std::string_view panel, bool list, PanelState& state) {
  if (is_due(panel, state) && !(list && state.focus.controls)) take_keys_now();
}

void take_keys_now() {
  ImGuiContext& g = *ImGui::GetCurrentContext();
  g.NavLayer = ImGuiNavLayer_Main;
  ImGui::FocusWindow(g.CurrentWindow);
  ImGui::NavInitWindow(g.CurrentWindow, true);
  show_focus();
}

void take_keys_to_item(std::string_view panel, PanelState& state) {
  if (!is_due(panel, state)) return;
  ImGuiContext& g = *ImGui::GetCurrentContext();
  ImGui::FocusWindow(g.CurrentWindow);
  ImGui::SetFocusID(ImGui::GetItemID(), g.CurrentWindow);
  show_focus();
}

void settle_keys(PanelState& state) {
  FocusState& focus = state.focus;
  focus.drawing_keys.clear();
  const auto drawn = [&](const std::string& tab) {
    return std::find(focus.open_tabs.begin(), focus.open_tabs.end(), tab) != focus.open_tabs.end();
  };
  const bool there = focus.panel == "messages" ? focus.messages : drawn(focus.panel);
  // A tab that was asked for is drawn in the frame after; one that no tab bar has taken is not there at all.
  const bool comes = focus.enters && focus.panel != "messages" && state.wanted_tab != focus.panel;
  if (there) focus.enters = false;
  if (there || comes || focus.panel.empty()) return;
  if (state.wanted_tab == focus.panel) state.wanted_tab.clear();
  focus.panel.clear();
  focus.enters = false;
}

void keep_keys_in_list(std::string_view panel, PanelState& state) {
  state.focus.panel = panel;
  state.focus.controls = false;
}

void draw_key_frame(const ImVec2& low, const ImVec2& high) {
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImU32 ink = ImGui::GetColorU32(ImGuiCol_NavHighlight);
  canvas.AddRect(low, high, ink, 0.0F, 0, em(0.14F));
  const ImVec2 middle{0.5F * (low.x + high.x), 0.5F * (low.y + high.y)};
  const float gap = em(0.3F), arm = em(0.9F), width = em(0.1F);
  for (const float way : {-1.0F, 1.0F}) {
    canvas.AddLine({middle.x + way * gap, middle.y}, {middle.x + way * arm, middle.y}, ink, width);
    canvas.AddLine({middle.x, middle.y + way * gap}, {middle.x, middle.y + way * arm}, ink, width);
  }
}

}  // namespace laywright
