#include <fmt/format.h>

#include "base/inch.h"
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
  const bool inch = units == Units::inch;
  const double per_length = inch ? 1.0 / mm_per_foot : 1e-3;
  ImGui::TableNextColumn();
  ImGui::TextUnformatted(layer.direction > 0 ? "right" : "left");
  cell(fmt::format("{:.1f}", layer.turns));
  cell(fmt::format("{:.2f}", layer.length_mm * per_length));
  cell(inch ? fmt::format("{:.4f}", layer.mean_diameter_mm / mm_per_inch)
            : fmt::format("{:.3f}", layer.mean_diameter_mm));
  cell(layer.mean_rise_d ? fmt::format("{:.3f}", *layer.mean_rise_d) : "-");
  cell(fmt::format("{:.2f}", layer.gap_length_mm * per_length));
  cell(fmt::format("{:.1f}", 100.0 * layer.bridged_share));
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
  const std::vector<const char*> names{"Layer",
                                       "To the",
                                       "Turns",
                                       inch ? "Length, ft" : "Length, m",
                                       inch ? "Mean \u00D8, in" : "Mean \u00D8, mm",
                                       "Rise, d",
                                       inch ? "By a gap, ft" : "By a gap, m",
                                       "Bridged, %"};
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
