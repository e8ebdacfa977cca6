#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "ui/drawer_panels.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

constexpr std::size_t most_columns = 1024;

// The shell's colours, each lit by how the fiber's round leans and how open it lies, so that crossovers show as lines.
// Columns that are finer than the screen are averaged.
void prepare(const std::shared_ptr<const Scene>& scene, MapState& state) {
  if (state.scene.lock() == scene) return;
  state.scene = scene;
  const Shell& shell = scene->shell;
  const ShellGrid& grid = shell.grid;
  const std::size_t each = std::max<std::size_t>(1, (grid.columns + most_columns - 1) / most_columns);
  const std::size_t columns = std::max<std::size_t>(1, grid.columns / each);
  PanelImage& image = state.image;
  ++image.version;
  image.width = static_cast<int>(columns);
  image.height = static_cast<int>(grid.rows);
  image.pixels.assign(columns * grid.rows, Rgba{});
  for (std::size_t row = 0; row < grid.rows; ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      float sum[3]{};
      for (std::size_t i = 0; i < each; ++i) {
        const std::size_t at = shell.index(row, column * each + i);
        const Rgba c = shell.colour[at].a > 0 ? shell.colour[at] : Rgba{150, 150, 155, 255};
        const float lean = static_cast<float>(shell.across[at]) / 127.0F;
        const float light =
            (0.55F + 0.45F * static_cast<float>(shell.openness[at]) / 255.0F) * (1.0F - 0.45F * lean * lean);
        sum[0] += light * c.r;
        sum[1] += light * c.g;
        sum[2] += light * c.b;
      }
      const auto mean = [&](float s) { return static_cast<std::uint8_t>(s / static_cast<float>(each)); };
      image.pixels[row * columns + column] = {mean(sum[0]), mean(sum[1]), mean(sum[2]), 255};
    }
  }
}

struct MapPlace {
  std::size_t row = 0, column = 0;
};

MapPlace place_under(const Shell& shell, const MapState& state, const ImVec2& low, const ImVec2& high) {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const double across = (mouse.x - low.x) / std::max(1.0F, high.x - low.x);
  const double up = (high.y - mouse.y) / std::max(1.0F, high.y - low.y);
  const double x = std::clamp(state.x_from + across * (state.x_to - state.x_from), 0.0, 0.999999);
  const double around = std::clamp(state.turn_from + up * (state.turn_to - state.turn_from), 0.0, 0.999999);
  return {static_cast<std::size_t>(around * static_cast<double>(shell.grid.rows)),
          static_cast<std::size_t>(x * static_cast<double>(shell.grid.columns))};
}

// Zooms x and the way around together, about the pointer; brought back into the whole.
void zoom(MapState& state, const ImVec2& low, const ImVec2& high) {
  const ImGuiIO& io = ImGui::GetIO();
  const auto about = [](double& from, double& to, double share, double factor) {
    const double at = from + share * (to - from);
    from = std::max(0.0, at + (from - at) * factor);
    to = std::min(1.0, at + (to - at) * factor);
  };
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0F) {
    const double factor = std::pow(1.25, -io.MouseWheel);
    about(state.x_from, state.x_to, (io.MousePos.x - low.x) / std::max(1.0F, high.x - low.x), factor);
    about(state.turn_from, state.turn_to, (high.y - io.MousePos.y) / std::max(1.0F, high.y - low.y), factor);
  }
  const auto shift = [](double& from, double& to, double by) {
    const double brought_in = std::clamp(by, -from, 1.0 - to);
    from += brought_in;
    to += brought_in;
  };
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
  prepare(shown.scene, state);
  const Stage& stage = bench.active()->stage;
  const int last = stage.view.last_layer.value_or(static_cast<int>(wound->build().strokes.size()));
  const std::string unit = shown.scene->legend.unit.empty() ? "" : fmt::format(" in {}", shown.scene->legend.unit);
  ImGui::TextDisabled("%s", fmt::format("Up to layer {}; x to the right, once around upward; colour: {}{}", last,
                                        shown.scene->legend.title, unit)
                                .c_str());
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Choose the layer and the colour in the tab View.");
  ImVec2 room = ImGui::GetContentRegionAvail();
  if (room.x < 8.0F || room.y < 8.0F) return;
  ImGui::InvisibleButton("map", room);
  panels.places.note_item("map");
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  zoom(state, low, high);
  if (panels.show_image) {
    const auto f = [](double v) { return static_cast<float>(v); };
    ImGui::GetWindowDrawList()->AddImage(panels.show_image(ImageSlot::map, state.image), low, high,
                                         {f(state.x_from), f(state.turn_to)}, {f(state.x_to), f(state.turn_from)});
  }
  const Shell& shell = shown.scene->shell;
  const ImVec2 pulled = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0F);
  const bool click = ImGui::IsItemDeactivated() && ImGui::IsItemHovered() && std::hypot(pulled.x, pulled.y) < 4.0F;
  if (!ImGui::IsItemHovered()) return;
  const MapPlace at = place_under(shell, state, low, high);
  const std::uint32_t node = shell.node[shell.index(at.row, at.column)];
  // The scene may still be of an older, longer build.
  if (node == no_node || node >= wound->build().nodes.size()) {
    ImGui::SetTooltip("bare barrel");
    return;
  }
  const NodeFacts facts = facts_of(wound->source, node);
  ImGui::SetTooltip("%s", fmt::format("turn {:.1f}, layer {}\nx {}, {:.0f}\u00B0\nradius {}", facts.turn,
                                      facts.layer, size_text(facts.x_mm, stage.view.units), facts.angle_deg,
                                      size_text(facts.r_mm, stage.view.units))
                              .c_str());
  if (!click) return;
  panels.wanted_tab = "Turn";
  out.push_back(cmd::PickNode{node});
  // The 3D picture turns so that the place faces the eye: azimuth and elevation both by its direction.
  Camera camera = stage.view.camera;
  const double angle = facts.angle_deg * std::numbers::pi / 180.0;
  camera.target = in_space(facts.x_mm, facts.r_mm, angle);
  camera.elevation_deg = std::clamp(90.0 - facts.angle_deg, -80.0, 80.0);
  camera.azimuth_deg = facts.angle_deg <= 180.0 ? 0.0 : 180.0;
  if (facts.angle_deg > 180.0) camera.elevation_deg = std::clamp(facts.angle_deg - 270.0, -80.0, 80.0);
  out.push_back(cmd::SetCamera{camera});
}

}  // namespace laywright
