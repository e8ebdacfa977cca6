#include <fmt/format.h>

#include "desk/place_words.h"
#include "session/command_rows.h"
#include "session/scrub_commands.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

void fact(const char* name, const std::string& value) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TextDisabled("%s", name);
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", value.c_str());
}

void facts(const NodeFacts& f, const Wound& wound, Units units) {
  if (!ImGui::BeginTable("facts", 2, ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_RowBg)) return;
  ImGui::TableSetupColumn("name");
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch);
  for (const Fact& each : turn_facts(f, wound.source.d(), units)) fact(each.name.c_str(), each.value);
  ImGui::EndTable();
}

void ways(const NodeFacts& f, PanelState& state, Commands& out) {
  const auto way = [&](const char* name, const std::optional<std::size_t>& there, Toward toward, const char* tip,
                       bool last) {
    const Command command = cmd::pick_toward(toward);
    if (!there) ImGui::BeginDisabled();
    if (ImGui::Button(name, {em(5.2F), 0.0F})) out.push_back(command);
    state.places.note_item(fmt::format("turn {}", name));
    if (!there) ImGui::EndDisabled();
    if (ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) {
      ImGui::SetTooltip("%s", with_keys(tip, command).c_str());
    }
    if (!last) ImGui::SameLine(0.0F, em(0.3F));
  };
  way("Previous", f.before, Toward::previous, "One turn back along the fiber", false);
  way("Above", f.above, Toward::above, "The turn that lies on this one", false);
  way("Next", f.after, Toward::next, "One turn on along the fiber", true);
  way("Left", f.left, Toward::left, "The neighbour in the layer", false);
  way("Below", f.below, Toward::below, "The turn that this one lies on", false);
  way("Right", f.right, Toward::right, "The neighbour in the layer", true);
  if (ImGui::Button("Wind to here", {em(8.0F), 0.0F})) out.push_back(cmd::scrub_to_picked());
  if (ImGui::IsItemHovered()) {
    ImGui::SetTooltip("%s", with_keys("The scrubber to this turn", cmd::scrub_to_picked()).c_str());
  }
  ImGui::SameLine(0.0F, em(0.3F));
  if (ImGui::Button("Let go")) out.push_back(cmd::pick_node());
}

}  // namespace

void turn_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  if (!wound) {
    ImGui::TextWrapped("What is known of a turn stands here as soon as a plan is laid.");
    return;
  }
  const Stage& stage = *bench.stage_in_hand();
  const std::optional<std::size_t> node = picked_node(stage, *wound);
  if (!node) {
    ImGui::TextWrapped("Click a turn in the picture, the section or the map: what is known of it stands here then.");
    return;
  }
  const NodeFacts f = facts_of(wound->source, *node);
  facts(f, *wound, stage.view.units);
  ImGui::Spacing();
  ways(f, state, out);
}

}  // namespace laywright
