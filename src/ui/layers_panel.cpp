#include <fmt/format.h>

#include "scene/palette.h"
#include "ui/drawer_panels.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

void row(const LayerRow& layer, bool alone, Units units, PanelState& state, Commands& out) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::PushID(layer.layer);
  if (ImGui::Selectable("##row", alone, ImGuiSelectableFlags_SpanAllColumns)) {
    out.push_back(alone ? cmd::Peel{1, std::nullopt} : cmd::Peel{1, layer.layer});
  }
  state.places.note_item(fmt::format("layer {}", layer.layer));
  ImGui::SameLine(0.0F, 0.0F);
  ImGui::TextColored(color_of(layer_rgba(static_cast<std::size_t>(layer.layer))), "\u2022");
  ImGui::SameLine();
  ImGui::Text("%d", layer.layer);
  const auto cell = [](const std::string& text) {
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(text.c_str());
  };
  cell(layer.direction > 0 ? "right" : "left");
  cell(fmt::format("{:.1f}", layer.turns));
  cell(fiber_length_text(layer.length_mm, units));
  cell(size_text(layer.mean_diameter_mm, units));
  cell(layer.mean_rise_d ? fmt::format("{:.3f}", *layer.mean_rise_d) : "-");
  cell(fiber_length_text(layer.gap_length_mm, units));
  cell(fmt::format("{:.1f} %", 100.0 * layer.bridged_share));
  ImGui::PopID();
}

}  // namespace

void layers_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound();
  const View& view = bench.active()->stage.view;
  const std::vector<LayerRow>& layers = wound->measurements().layers;
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_ScrollX |
                                    ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerV;
  if (!ImGui::BeginTable("layers", 8, flags, ImGui::GetContentRegionAvail())) return;
  ImGui::TableSetupScrollFreeze(0, 1);
  for (const char* name :
       {"Layer", "To the", "Turns", "Length", "Mean diameter", "Rise, d", "Beside a gap", "Bridged"}) {
    ImGui::TableSetupColumn(name);
  }
  ImGui::TableHeadersRow();
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(layers.size()));
  while (clipper.Step()) {
    for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
      const LayerRow& layer = layers[static_cast<std::size_t>(i)];
      row(layer, view.last_layer == layer.layer, view.units, state, out);
    }
  }
  ImGui::EndTable();
}

}  // namespace laywright
