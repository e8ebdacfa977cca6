#include <fmt/format.h>

#include "figures/wind_rows.h"
#include "scene/colour_range.h"
#include "session/view_commands.h"
#include "ui/focus.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

void row(const LayerRow& layer, Rgba colour, bool alone, Units units, PanelState& state, Commands& out) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::PushID(layer.layer);
  if (ImGui::Selectable("##row", alone, ImGuiSelectableFlags_SpanAllColumns)) {
    out.push_back(alone ? cmd::peel(1, std::nullopt) : cmd::peel(1, layer.layer));
    keep_keys_in_list("Layers", state);
  }
  state.places.note_item(fmt::format("layer {}", layer.layer));
  ImGui::SameLine(0.0F, 0.0F);
  ImGui::TextColored(color_of(colour), "\u2022");
  ImGui::SameLine();
  ImGui::Text("%d", layer.layer);
  const auto cell = [](const std::string& text) {
    ImGui::TableNextColumn();
    right_text(text);
  };
  const auto [number, way, turns, length, diameter, rise, gaps, crossings, bridged] =
      layer_cells(layer, units == Units::inch);
  ImGui::TableNextColumn();
  ImGui::TextUnformatted(way.c_str());
  for (const std::string* each : {&turns, &length, &diameter, &rise, &gaps, &bridged}) cell(*each);
  ImGui::PopID();
}

}  // namespace

void layers_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  const View& view = bench.stage_in_hand()->view;
  const std::vector<LayerRow>& layers = wound->measurements().layers;
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_ScrollX |
                                    ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerV;
  if (!ImGui::BeginTable("layers", 8, flags, ImGui::GetContentRegionAvail())) return;
  take_keys_here("Layers", true, state);
  ImGui::TableSetupScrollFreeze(0, 1);
  const bool inch = view.units == Units::inch;
  const LayerCells heads = layer_heads(inch);
  std::vector<const char*> names;
  for (const std::string& head : heads) names.push_back(head.c_str());
  names.erase(names.end() - 2);  // crossings: no room
  for (const char* name : names) ImGui::TableSetupColumn(name);
  table_heads(names, 2,
              {"Click a line to show the wind up to that layer; again for all of it",
               "Way of the guide in this stroke", "Turns in this layer", "Fiber in this layer",
               "Mean diameter of the fiber's centre line", "Mean rise over the layer below, in fiber diameters",
               "Fiber that lies beside a gap wider than the limit", "Share of the fiber that hangs free"});
  // As in the picture when it tells layers.
  View of_layers = view;
  of_layers.colouring = Colouring::layer;
  const ColourRange range = is_of(view.range, of_layers) ? *view.range : *own_range(wound->source, of_layers);
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(layers.size()));
  while (clipper.Step()) {
    for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
      const LayerRow& layer = layers[static_cast<std::size_t>(i)];
      row(layer, scale_colour(range, layer.layer), view.last_layer == layer.layer, view.units, state, out);
    }
  }
  ImGui::EndTable();
}

}  // namespace laywright
