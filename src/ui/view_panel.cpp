#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "session/camera_commands.h"
#include "session/command_rows.h"
#include "session/view_commands.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

struct ColouringName {
  Colouring colouring;
  const char* name;
};
constexpr std::array<ColouringName, 12> colourings{{{Colouring::layer, "Layer"},
                                                    {Colouring::direction, "Stroke direction"},
                                                    {Colouring::rise, "Rise over the layer below"},
                                                    {Colouring::gap, "Gap to the neighbour"},
                                                    {Colouring::height, "Height above the middle"},
                                                    {Colouring::support, "What carries the fiber"},
                                                    {Colouring::length, "Length from the start"},
                                                    {Colouring::tension, "Tension when it was laid"},
                                                    {Colouring::payoff, "Pull to draw it off the side"},
                                                    {Colouring::payoff_left, "Pull over the left end"},
                                                    {Colouring::payoff_right, "Pull over the right end"},
                                                    {Colouring::material, "Material"}}};

void heading(const char* words, const PanelState& state) {
  ImGui::Spacing();
  ImGui::PushFont(state.strong);
  ImGui::TextUnformatted(words);
  ImGui::PopFont();
}

void toggle(const std::string& name, bool on, const Command& command, std::string_view tip, PanelState& state,
            Commands& out) {
  bool value = on;
  if (ImGui::Checkbox(name.c_str(), &value)) out.push_back(command);
  state.places.note_item(fmt::format("view {}", name));
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", with_keys(tip, command).c_str());
}

// Of commands that stand here as in the menu.
void toggles_of_rows(const View& view, PanelState& state, Commands& out) {
  for (const CommandRow& row : command_rows()) {
    if (row.also != Also::in_view_tab) continue;
    toggle(std::string(row.name), row.command.is_on(view), row.command, row.help, state, out);
  }
}

void peel(const Workbench& bench, const View& view, PanelState& state, Commands& out) {
  heading("Layers", state);
  const int layers = static_cast<int>(bench.wound_in_hand()->build().strokes.size());
  int first = std::clamp(view.first_layer, 1, layers);
  int last = std::clamp(view.last_layer.value_or(layers), first, layers);
  ImGui::SetNextItemWidth(-em(3.0F));
  bool changed = ImGui::SliderInt("from", &first, 1, layers, "%d", ImGuiSliderFlags_AlwaysClamp);
  ImGui::SetNextItemWidth(-em(3.0F));
  changed |= ImGui::SliderInt("to", &last, 1, layers, "%d", ImGuiSliderFlags_AlwaysClamp);
  state.places.note_item("view last layer");
  if (changed) {
    last = std::max(first, last);
    out.push_back(cmd::peel(first, last < layers ? std::optional<int>(last) : std::nullopt));
  }
  toggle("Fade the others", view.outside == Outside::faded, cmd::toggle_outside(),
         "Layers outside the range stay as a veil", state, out);
}

void wedge(const View& view, PanelState& state, Commands& out) {
  toggle("Wedge", view.wedge.has_value(), cmd::toggle_wedge(), "Cut a part out of the spool", state, out);
  if (!view.wedge) return;
  double from = std::remainder(view.wedge->from, 2.0 * std::numbers::pi) / rad_per_deg;
  if (from < 0.0) from += 360.0;
  auto start = static_cast<float>(from);
  auto opening = static_cast<float>((view.wedge->to - view.wedge->from) / rad_per_deg);
  ImGui::SetNextItemWidth(-em(4.6F));
  bool changed = ImGui::SliderFloat("begins##wedge", &start, 0.0F, 360.0F, "%.0f\u00B0");
  ImGui::SetNextItemWidth(-em(4.6F));
  changed |= ImGui::SliderFloat("opening##wedge", &opening, 1.0F, 350.0F, "%.0f\u00B0");
  state.places.note_item("view wedge opening");
  if (changed) out.push_back(cmd::set_wedge(Sector{start * rad_per_deg, (start + opening) * rad_per_deg}));
}

void axial_cut(const View& view, PanelState& state, Commands& out) {
  toggle("Axial cut", view.axial_cut_rad.has_value(), cmd::toggle_axial_cut(), "Cut the spool in half", state, out);
  if (!view.axial_cut_rad) return;
  double angle = std::remainder(*view.axial_cut_rad, 2.0 * std::numbers::pi) / rad_per_deg;
  if (angle < 0.0) angle += 360.0;
  auto shown = static_cast<float>(angle);
  ImGui::SetNextItemWidth(-em(4.6F));
  if (ImGui::SliderFloat("at##cut", &shown, 0.0F, 360.0F, "%.0f\u00B0")) {
    out.push_back(cmd::set_axial_cut(shown * rad_per_deg));
  }
}

void across(const Workbench& bench, const View& view, PanelState& state, Commands& out) {
  const double width = bench.wound_in_hand()->plan().spool().inside_width_mm;
  bool on = view.x_from_mm || view.x_to_mm;
  if (ImGui::Checkbox("Part of the width", &on)) {
    out.push_back(on ? cmd::set_x_range(0.0, 0.5 * width) : cmd::set_x_range());
  }
  state.places.note_item("view Part of the width");
  if (!view.x_from_mm && !view.x_to_mm) return;
  const bool inch = view.units == Units::inch;
  const double unit = 1.0 / value_in(Amount::small_length, 1.0, inch);
  const std::string format =
      fmt::format("%.{}f {}", decimals_in(Amount::small_length, 2, inch), unit_in(Amount::small_length, inch));
  auto from = static_cast<float>(view.x_from_mm.value_or(0.0) / unit);
  auto to = static_cast<float>(view.x_to_mm.value_or(width) / unit);
  const auto most = static_cast<float>(width / unit);
  ImGui::SetNextItemWidth(-em(4.6F));
  bool changed = ImGui::SliderFloat("from##x", &from, 0.0F, most, format.c_str());
  ImGui::SetNextItemWidth(-em(4.6F));
  changed |= ImGui::SliderFloat("to##x", &to, 0.0F, most, format.c_str());
  if (changed) out.push_back(cmd::set_x_range(from * unit, std::max(from, to) * unit));
}

void colouring(const View& view, PanelState& state, Commands& out) {
  heading("Colour by", state);
  for (const ColouringName& c : colourings) {
    if (ImGui::RadioButton(c.name, view.colouring == c.colouring)) out.push_back(cmd::set_colouring(c.colouring));
    state.places.note_item(fmt::format("colour {}", c.name));
  }
}

void look_from(PanelState& state, Commands& out) {
  heading("Look", state);
  const auto look = [&](const char* name, double azimuth, double elevation, bool last) {
    if (ImGui::Button(name)) out.push_back(cmd::look_from(azimuth, elevation));
    if (!last) ImGui::SameLine(0.0F, em(0.3F));
  };
  look("Front", 0.0, 0.0, false);
  look("Above", 0.0, 90.0, false);
  look("Left", -90.0, 0.0, false);
  look("Right", 90.0, 0.0, true);
  look("Askew", 30.0, 20.0, false);
  if (ImGui::Button("Fit")) out.push_back(cmd::fit_view());
  ImGui::SameLine(0.0F, em(0.3F));
  if (ImGui::Button("Show all")) out.push_back(cmd::show_all());
  if (ImGui::IsItemHovered())
    ImGui::SetTooltip("%s", with_keys("No peel, no cut, the whole wind", cmd::show_all()).c_str());
}

}  // namespace

void view_panel(const Workbench& bench, PanelState& state, Commands& out) {
  if (!bench.wound_in_hand()) {
    ImGui::TextWrapped("What is shown of the build is chosen here as soon as a plan is laid.");
    return;
  }
  const View& view = bench.stage_in_hand()->view;
  peel(bench, view, state, out);
  heading("Cuts", state);
  wedge(view, state, out);
  axial_cut(view, state, out);
  across(bench, view, state, out);
  colouring(view, state, out);
  heading("Also shown", state);
  toggles_of_rows(view, state, out);
  toggle("Parallel", view.camera.projection == Projection::parallel, cmd::toggle_projection(), "Without perspective",
         state, out);
  look_from(state, out);
  ImGui::Spacing();
  ImGui::PushTextWrapPos(0.0F);
  ImGui::TextDisabled(
      "Drag turns the spool, drag with Shift or the right button moves it, the wheel zooms, a click "
      "picks a turn. F1 lists all keys.");
  ImGui::PopTextWrapPos();
}

}  // namespace laywright
