#include <algorithm>

#include <fmt/format.h>

#include "scene/palette.h"
#include "ui/drawer_panels.h"
#include "ui/plot.h"
#include "ui/style.h"

namespace laywright {
namespace {

ImU32 color(std::size_t i) { return ImGui::GetColorU32(color_of(layer_palette[i])); }

struct Scale {
  double size, length;  // mm to what is shown
  const char *size_name, *length_name;
};

Scale scale_of(Units units) {
  return units == Units::inch ? Scale{1.0 / 25.4, 1.0 / 304.8, "in", "ft"} : Scale{1.0, 1e-3, "mm", "m"};
}

Plot turns_per_layer(const std::vector<LayerRow>& layers) {
  PlotLine line{"turns", color(0), {}, {}, true};
  for (const LayerRow& l : layers) {
    line.x.push_back(l.layer);
    line.y.push_back(l.turns);
  }
  return {"Turns per layer", "layer", "turns", {std::move(line)}};
}

Plot diameter_by_length(const std::vector<LayerRow>& layers, const Scale& s) {
  PlotLine line{"mean diameter", color(0), {}, {}, false};
  double length = 0.0;
  for (const LayerRow& l : layers) {
    line.x.push_back((length + 0.5 * l.length_mm) * s.length);
    line.y.push_back(l.mean_diameter_mm * s.size);
    length += l.length_mm;
  }
  return {fmt::format("Mean diameter, {}", s.size_name),
          fmt::format("length, {}", s.length_name),
          "",
          {std::move(line)}};
}

Plot surface(const Measurements& m, const Scale& s) {
  PlotLine mean{"mean", color(0), {}, {}, false}, most{"most", color(4), {}, {}, false},
      least{"least", color(2), {}, {}, false};
  // More points than the screen has pixels tell nothing.
  const std::size_t step = std::max<std::size_t>(1, m.surface.x_mm.size() / 800);
  for (std::size_t i = 0; i < m.surface.x_mm.size(); i += step) {
    for (PlotLine* line : {&mean, &most, &least}) line->x.push_back(m.surface.x_mm[i] * s.size);
    mean.y.push_back(m.surface.mean_mm[i] * s.size);
    most.y.push_back(m.surface.greatest_mm[i] * s.size);
    least.y.push_back(m.surface.least_mm[i] * s.size);
  }
  return {fmt::format("Surface radius, {}", s.size_name),
          fmt::format("x, {}", s.size_name),
          "",
          {std::move(most), std::move(mean), std::move(least)}};
}

}  // namespace

void curves_panel(const Workbench& bench, Commands&) {
  const WoundPtr wound = bench.wound_in_hand();
  const Measurements& m = wound->measurements();
  const Scale s = scale_of(bench.active()->stage.view.units);
  if (m.layers.empty()) {
    ImGui::TextDisabled("The build is being measured.");
    return;
  }
  const ImVec2 room = ImGui::GetContentRegionAvail();
  if (room.x < em(12.0F) || room.y < em(5.0F)) return;
  const std::size_t across = room.x > em(52.0F) ? 3 : room.x > em(30.0F) ? 2 : 1;
  const std::vector<Plot> plots{surface(m, s), turns_per_layer(m.layers), diameter_by_length(m.layers, s)};
  ImGui::BeginChild("plots", room);
  const float width = ImGui::GetContentRegionAvail().x / static_cast<float>(across) - em(0.5F);
  for (std::size_t i = 0; i < plots.size(); ++i) {
    draw_plot(plots[i], {width, std::max(em(8.0F), room.y - em(0.3F))});
    if (i % across + 1 < across && i + 1 < plots.size()) ImGui::SameLine();
  }
  ImGui::EndChild();
}

}  // namespace laywright
