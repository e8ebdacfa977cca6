#include <fmt/format.h>

#include "session/command_rows.h"
#include "session/scrub_commands.h"
#include "ui/panels.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

void fact(const char* name, const std::string& value) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TextDisabled("%s", name);
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", value.c_str());
}

const char* carried_by(Support support) {
  switch (support) {
    case Support::none: return "nothing: it bridges";
    case Support::barrel: return "the barrel";
    case Support::turn: return "one turn";
    case Support::valley: return "a valley between two";
    case Support::flange: return "the flange";
  }
  return "";
}

void facts(const NodeFacts& f, const Wound& wound, Units units) {
  if (!ImGui::BeginTable("facts", 2, ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_RowBg)) return;
  ImGui::TableSetupColumn("name");
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch);
  fact("Turn", fmt::format("{:.3f}", f.turn));
  fact("Layer", fmt::format("{}, stroke to the {}", f.layer, f.direction > 0 ? "right" : "left"));
  fact("In the layer", fmt::format("turn {:.3f}", f.turn_in_layer));
  fact("Length", fmt::format("{} from the start", fiber_length_text(f.length_mm, units)));
  fact("x", size_text(f.x_mm, units));
  fact("Radius", size_text(f.r_mm, units));
  fact("Angle", fmt::format("{:.1f}\u00B0", f.angle_deg));
  fact("Rise", f.rise_d ? fmt::format("{:.3f} d ({}) over the layer below", *f.rise_d,
                                      size_text(*f.rise_d * wound.source.d(), units))
                        : "nothing below to rise over");
  fact("Gap", f.gap_d ? fmt::format("{:.3f} d ({}) on the wider side", *f.gap_d,
                                    size_text(*f.gap_d * wound.source.d(), units))
                      : "no neighbour in the layer");
  fact("Carried by", carried_by(f.support));
  if (f.rides_up) fact("Note", "it rides up on a turn of its own layer");
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
