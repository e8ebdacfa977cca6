#include "ui/colour_field.h"

#include <cmath>

#include <fmt/format.h>

#include "plan/mixed_colour.h"
#include "scene/material.h"
#include "scene/palette.h"
#include "session/plan_commands.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr float gap = 0.35F;  // in letters

std::optional<FiberColour> colour_of_row(const FieldRow& row) {
  return row.value ? std::optional(static_cast<FiberColour>(*row.value)) : std::nullopt;
}

// As it is mixed, or as the fiber is seen that was laid.
std::optional<Rgba> seen_colour(const Workbench& bench, const FieldRow& row) {
  const auto colour = colour_of_row(row);
  const auto mix = colour ? mix_of(*colour) : std::nullopt;
  if (mix) return rgb(*mix);
  if (const WoundPtr wound = bench.wound()) return fiber_material(wound->plan()).colour;
  return std::nullopt;
}

void picker(const FieldRow& row, PanelState& state, Commands& out) {
  MixState& mix = state.mix;
  if (mix.path != row.path || !ImGui::BeginPopup("mixing")) return;
  ImGui::SetNextItemWidth(em(12.0F));
  const bool changed = ImGui::ColorPicker3(
      "##mixed", mix.shares.data(),
      ImGuiColorEditFlags_NoSidePreview | ImGuiColorEditFlags_NoSmallPreview | ImGuiColorEditFlags_DisplayHex);
  state.places.note_item("mixing " + row.path);
  if (changed) {
    const auto byte = [&](std::size_t part) { return static_cast<int>(std::lround(255.0F * mix.shares[part])); };
    const auto mixed = mixed_colour(fmt::format("#{:02x}{:02x}{:02x}", byte(0), byte(1), byte(2)));
    if (mixed && mixed != colour_of_row(row))
      out.push_back(cmd::set_field(row.path, static_cast<double>(*mixed), mix.gesture));
  }
  ImGui::EndPopup();
}

}  // namespace

float colour_patch_width() { return ImGui::GetFrameHeight() + em(gap); }

void colour_patch(const Workbench& bench, const FieldRow& row, PanelState& state, Commands& out) {
  const Rgba seen = seen_colour(bench, row).value_or(Rgba{255, 255, 255, 255});
  const ImVec4 colour = color_of(seen);
  ImGui::SameLine(0.0F, em(gap));
  const float side = ImGui::GetFrameHeight();
  if (ImGui::ColorButton("mix", colour, ImGuiColorEditFlags_NoTooltip | ImGuiColorEditFlags_NoDragDrop,
                         {side, side})) {
    state.mix = {row.path, {colour.x, colour.y, colour.z}, ++state.gestures};
    ImGui::OpenPopup("mixing");
  }
  state.places.note_item("mix " + row.path);
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Mix a colour that is none of the words");
  picker(row, state, out);
}

}  // namespace laywright
