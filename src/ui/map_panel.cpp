#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "session/camera_commands.h"
#include "session/scrub_commands.h"
#include "ui/flat_view.h"
#include "ui/focus.h"
#include "ui/map_image.h"
#include "ui/panel_trouble.h"
#include "ui/panels.h"
#include "ui/style.h"

namespace laywright {
namespace {

void prepare(const std::shared_ptr<const Scene>& scene, const PanelState& panels, MapState& state) {
  if (auto made = state.work.take()) {
    const std::uint64_t version = state.image.version + 1;
    state.scene = made->first;
    state.image = std::move(made->second);
    state.image.version = version;
  }
  if (state.scene.lock() == scene || state.asked.lock() == scene) return;
  state.asked = scene;
  state.work.ask([scene] { return std::pair(std::weak_ptr<const Scene>(scene), map_image(*scene)); }, panels.wake);
}

struct MapPlace {
  std::size_t row = 0, column = 0;
};

MapPlace place_at(const Shell& shell, const MapState& state, const ImVec2& mouse, const ImVec2& low,
                  const ImVec2& high) {
  const double across = (mouse.x - low.x) / std::max(1.0F, high.x - low.x);
  const double up = (high.y - mouse.y) / std::max(1.0F, high.y - low.y);
  const double x = std::clamp(state.x_from + across * (state.x_to - state.x_from), 0.0, 0.999999);
  const double around = std::clamp(state.turn_from + up * (state.turn_to - state.turn_from), 0.0, 0.999999);
  return {static_cast<std::size_t>(around * static_cast<double>(shell.grid.rows)),
          static_cast<std::size_t>(x * static_cast<double>(shell.grid.columns))};
}

// About a share of what is seen; brought back into the whole.
void zoom_about(double& from, double& to, double share, double factor) {
  const double at = from + share * (to - from);
  from = std::max(0.0, at + (from - at) * factor);
  to = std::min(1.0, at + (to - at) * factor);
}

void shift(double& from, double& to, double by) {
  const double brought_in = std::clamp(by, -from, 1.0 - to);
  from += brought_in;
  to += brought_in;
}

// True: the place at the cross is to be picked.
bool take_drawing_keys(MapState& state, const std::vector<std::string>& pressed) {
  bool picks = false;
  for (const std::string& keys : pressed) {
    if (const auto by = move_of_key(keys)) {
      shift(state.x_from, state.x_to, by->right * (state.x_to - state.x_from));
      shift(state.turn_from, state.turn_to, by->up * (state.turn_to - state.turn_from));
      zoom_about(state.x_from, state.x_to, 0.5, by->factor);
      zoom_about(state.turn_from, state.turn_to, 0.5, by->factor);
    }
    if (keys == "Home") state.x_from = state.turn_from = 0.0;
    if (keys == "Home") state.x_to = state.turn_to = 1.0;
    picks |= keys == "Enter";
  }
  return picks;
}

// Zooms x and the way around together, about the pointer.
void zoom(MapState& state, const ImVec2& low, const ImVec2& high) {
  const ImGuiIO& io = ImGui::GetIO();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0F) {
    const double factor = std::pow(1.25, -io.MouseWheel);
    zoom_about(state.x_from, state.x_to, (io.MousePos.x - low.x) / std::max(1.0F, high.x - low.x), factor);
    zoom_about(state.turn_from, state.turn_to, (high.y - io.MousePos.y) / std::max(1.0F, high.y - low.y), factor);
  }
  if (ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left, 4.0F)) {
    shift(state.x_from, state.x_to, -io.MouseDelta.x / (high.x - low.x) * (state.x_to - state.x_from));
    shift(state.turn_from, state.turn_to, io.MouseDelta.y / (high.y - low.y) * (state.turn_to - state.turn_from));
  }
}

}  // namespace

void map_panel(const Workbench& bench, const Shown& shown, PanelState& panels, Commands& out) {
  const WoundPtr wound = bench.wound();
  if (!shown.scene) {
    ImGui::TextDisabled("The map is being made.");
    return;
  }
  MapState& state = panels.map;
  prepare(shown.scene, panels, state);
  const Stage& stage = bench.active()->stage;
  const int last = stage.view.last_layer.value_or(static_cast<int>(wound->build().strokes.size()));
  const std::string unit = shown.scene->legend.unit.empty() ? "" : fmt::format(" in {}", shown.scene->legend.unit);
  ImGui::TextDisabled("%s", fmt::format("Up to layer {}; x to the right, once around upward; colour: {}{}", last,
                                        shown.scene->legend.title, unit)
                                .c_str());
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Choose the layer and the colour in the tab View.");
  panel_trouble(state.work.trouble(), stage.view.theme);
  ImVec2 room = ImGui::GetContentRegionAvail();
  if (room.x < 8.0F || room.y < 8.0F) return;
  ImGui::InvisibleButton("map", room);
  panels.places.note_item("map");
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  zoom(state, low, high);
  const bool has_keys = drawing_has_keys("Map", panels);
  const bool key_pick = has_keys && take_drawing_keys(state, panels.focus.drawing_keys);
  if (panels.show_image && state.image.version > 0) {
    const auto f = [](double v) { return static_cast<float>(v); };
    ImGui::GetWindowDrawList()->AddImage(panels.show_image(ImageSlot::map, state.image), low, high,
                                         {f(state.x_from), f(state.turn_to)}, {f(state.x_to), f(state.turn_from)});
  }
  const Shell& shell = shown.scene->shell;
  const ImVec2 pulled = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0F);
  const bool click = ImGui::IsItemDeactivated() && ImGui::IsItemHovered() && std::hypot(pulled.x, pulled.y) < 4.0F;
  if (has_keys) draw_key_frame(low, high);
  if (!ImGui::IsItemHovered() && !key_pick) return;
  const ImVec2 middle{0.5F * (low.x + high.x), 0.5F * (low.y + high.y)};
  const MapPlace at = place_at(shell, state, key_pick ? middle : ImGui::GetIO().MousePos, low, high);
  const std::uint32_t node = shell.node[shell.index(at.row, at.column)];
  // The scene may still be of an older, longer build.
  if (node == no_node || node >= wound->build().nodes.size()) {
    ImGui::SetTooltip("bare barrel");
    return;
  }
  const NodeFacts facts = facts_of(wound->source, node);
  const bool inch = stage.view.units == Units::inch;
  ImGui::SetTooltip(
      "%s", fmt::format("turn {}, layer {}\nx {}, {}\nradius {}", figure(facts.turn, 1), facts.layer,
                        size_text(facts.x_mm, inch), degrees_text(facts.angle_deg, 0), size_text(facts.r_mm, inch))
                .c_str());
  if (!click && !key_pick) return;
  panels.wanted_tab = "Turn";
  out.push_back(cmd::pick_node(node));
  // The 3D picture turns so that the place faces the eye: azimuth and elevation both by its direction.
  Camera camera = stage.view.camera;
  const double angle = facts.angle_deg * rad_per_deg;
  camera.target = in_space(facts.x_mm, facts.r_mm, angle);
  camera.elevation_deg = std::clamp(90.0 - facts.angle_deg, -80.0, 80.0);
  camera.azimuth_deg = facts.angle_deg <= 180.0 ? 0.0 : 180.0;
  if (facts.angle_deg > 180.0) camera.elevation_deg = std::clamp(facts.angle_deg - 270.0, -80.0, 80.0);
  out.push_back(cmd::set_camera(camera));
}

}  // namespace laywright
