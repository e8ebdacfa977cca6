// Curves over the wound length, and what else of a build is best seen as a curve.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "desk/machine_quantity.h"
#include "figures/figures.h"
#include "scene/palette.h"
#include "session/scrub_commands.h"
#include "ui/panels.h"
#include "ui/plot.h"
#include "ui/style.h"

namespace laywright {
namespace {

// What every curve is drawn from.
struct Subject {
  const Wound& wound;
  const TakeupRun* run;  // null while it is being computed
  Moment moment;
  Units units;
  Theme theme;

  [[nodiscard]] bool inch() const { return units == Units::inch; }
  [[nodiscard]] double length(double mm) const { return value_in(Amount::fiber_length, mm / 1e3, inch()); }
  [[nodiscard]] double size(double mm) const { return value_in(Amount::small_length, mm, inch()); }
  [[nodiscard]] const char* size_unit() const { return unit_in(Amount::small_length, inch()); }
  // Of colours that can be told apart, those that stand out from the ground.
  [[nodiscard]] ImU32 color(std::size_t i) const {
    const std::size_t light[] = {0, 4, 2}, dark[] = {5, 1, 2};
    return ImGui::GetColorU32(color_of(hue_palette[theme == Theme::light ? light[i] : dark[i]]));
  }
};

struct LengthPlot {
  std::string place;  // its name for whoever drives the window
  Plot plot;
  bool over_length = true;
};

LengthPlot over_length(const Subject& s, const char* place, std::string title) {
  LengthPlot made{
      place, {std::move(title), fmt::format("length, {}", unit_in(Amount::fiber_length, s.inch())), {}, {}, {}, {}}};
  made.plot.mark_x = s.length(s.moment.length_mm);
  return made;
}

std::vector<PlotBound> bounds_of(const Subject& s, const MachineQuantity& q) {
  const Plan& plan = s.wound.plan();
  const auto& takeup = plan.takeup();
  std::vector<PlotBound> bounds;
  const auto add = [&](const char* name, const std::optional<double>& curve_value) {
    if (!curve_value) return;
    const double y = value_in(q, *curve_value, s.units);
    bounds.push_back({fmt::format("{} {} {}", name, short_figure(y, 3), unit_of(q, s.units)), y});
  };
  const std::string_view id = q.id;
  if (id == "tension") {
    add("most", plan.fiber().max_tension_N);
    add("least", s.run->hold.least_tension_N);
  }
  if (id == "spool_speed" && takeup) add("ceiling", takeup->speed_ceiling_rpm);
  if (id == "current" && takeup) add("full", takeup->full_current_A);
  if (id == "torque" && takeup) add("full", takeup->torque_at_full_current_Nmm);
  return bounds;
}

std::optional<LengthPlot> curve_of(const Subject& s, const MachineQuantity& q) {
  const std::vector<double>& values = s.run->curves.*q.curve;
  if (values.empty()) return std::nullopt;
  LengthPlot made = over_length(s, q.id, fmt::format("{}, {}", q.name, unit_of(q, s.units)));
  PlotLine line{q.name, s.color(0), {}, {}, false};
  for (const double length : s.run->curves.length_mm) line.x.push_back(s.length(length));
  for (const double value : values) line.y.push_back(value_in(q, value, s.units));
  made.plot.lines.push_back(std::move(line));
  made.plot.bounds = bounds_of(s, q);
  if (const auto here = value_at(q, *s.run, s.moment.length_mm, s.moment.layer)) {
    made.plot.mark_text = text_of(q, *here, *s.run, s.units);
  }
  return made;
}

// How far the surface at the flanges stands over the middle, layer by layer; a last one that is not whole is left out.
LengthPlot edges(const Subject& s) {
  LengthPlot made = over_length(s, "edges", fmt::format("Edge over the middle, {}", s.size_unit()));
  PlotLine left{"left", s.color(0), {}, {}, false}, right{"right", s.color(1), {}, {}, false};
  double length = 0.0;
  for (const LayerRow& layer : s.wound.measurements().layers) {
    length += layer.length_mm;
    if (!layer.edges && layer.layer > 1) continue;
    const auto& outer = layer.outer_diameter_mm;
    for (PlotLine* line : {&left, &right}) line->x.push_back(s.length(length));
    left.y.push_back(s.size(0.5 * (outer[0] - outer[1])));
    right.y.push_back(s.size(0.5 * (outer[2] - outer[1])));
  }
  const double at = *made.plot.mark_x;
  if (const auto l = y_at(left, at), r = y_at(right, at); l && r) {
    const int decimals = decimals_in(Amount::small_length, 3, s.inch());
    made.plot.mark_text = fmt::format("{}, {}", figure(*l, decimals), figure(*r, decimals));
  }
  made.plot.lines = {std::move(left), std::move(right)};
  return made;
}

LengthPlot turns_per_layer(const Subject& s) {
  LengthPlot made{"turns per layer", {"Turns per layer", "layer", {}, {}, {}, {}}, false};
  PlotLine line{"turns", s.color(0), {}, {}, true};
  for (const LayerRow& l : s.wound.measurements().layers) {
    line.x.push_back(l.layer);
    line.y.push_back(l.turns);
    if (l.layer == s.moment.layer) made.plot.mark_text = fmt::format("layer {}: {}", l.layer, figure(l.turns, 2));
  }
  made.plot.mark_x = s.moment.layer;
  made.plot.lines.push_back(std::move(line));
  return made;
}

LengthPlot surface(const Subject& s) {
  const SurfaceProfile& profile = s.wound.measurements().surface;
  PlotLine mean{"mean", s.color(0), {}, {}, false}, most{"most", s.color(1), {}, {}, false},
      least{"least", s.color(2), {}, {}, false};
  // More points than the screen has pixels tell nothing.
  const std::size_t step = std::max<std::size_t>(1, profile.x_mm.size() / 800);
  for (std::size_t i = 0; i < profile.x_mm.size(); i += step) {
    for (PlotLine* line : {&mean, &most, &least}) line->x.push_back(s.size(profile.x_mm[i]));
    mean.y.push_back(s.size(profile.mean_mm[i]));
    most.y.push_back(s.size(profile.greatest_mm[i]));
    least.y.push_back(s.size(profile.least_mm[i]));
  }
  return {"surface",
          {fmt::format("Surface radius at the end, {}", s.size_unit()),
           fmt::format("x, {}", s.size_unit()),
           {std::move(most), std::move(mean), std::move(least)},
           {},
           {},
           {}},
          false};
}

std::vector<LengthPlot> plots_of(const Subject& s) {
  std::vector<LengthPlot> plots;
  for (const MachineQuantity& q : machine_quantities()) {
    if (s.run == nullptr) break;
    if (std::optional<LengthPlot> made = curve_of(s, q)) plots.push_back(std::move(*made));
  }
  plots.push_back(edges(s));
  plots.push_back(surface(s));
  plots.push_back(turns_per_layer(s));
  return plots;
}

// What the plan does not say, and would tell: the curves that are not there.
void missing(const Subject& s, const ImVec2& size) {
  ImGui::BeginChild("missing", size);
  ImGui::TextUnformatted("Not in the plan");
  for (const MissingKey& missing : s.run->missing) {
    const bool of_curves = missing.key.starts_with("wind.") || missing.key.starts_with("takeup.");
    if (!of_curves) continue;
    ImGui::PushTextWrapPos(0.0F);
    ImGui::TextDisabled("Fill in %s: %s.", missing.key.c_str(), missing.gives.c_str());
    ImGui::PopTextWrapPos();
  }
  ImGui::EndChild();
}

bool any_missing(const Subject& s) {
  return s.run != nullptr && std::any_of(s.run->missing.begin(), s.run->missing.end(), [](const MissingKey& m) {
           return m.key.starts_with("wind.") || m.key.starts_with("takeup.");
         });
}

}  // namespace

void curves_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  if (!wound || wound->measurements().layers.empty()) {
    ImGui::TextDisabled("The build is being measured.");
    return;
  }
  const Stage& stage = *bench.stage_in_hand();
  const TakeupPtr run = wound->takeup();
  const Subject s{*wound, run.get(), moment_of(stage.playback, *wound), stage.view.units, stage.view.theme};
  const ImVec2 room = ImGui::GetContentRegionAvail();
  if (room.x < em(12.0F) || room.y < em(5.0F)) return;
  ImGui::BeginChild("plots", room);
  const std::vector<LengthPlot> plots = plots_of(s);
  const ImVec2 gap{em(1.0F), em(0.5F)};
  const float inner = ImGui::GetContentRegionAvail().x - ImGui::GetStyle().ScrollbarSize;
  const auto across = static_cast<std::size_t>(std::clamp((inner + gap.x) / (em(16.0F) + gap.x), 1.0F, 5.0F));
  // As many rows as are legible; fewer and higher ones where there are not so many.
  const std::size_t cells = plots.size() + (any_missing(s) ? 1 : 0);
  const auto rows = static_cast<float>((cells + across - 1) / across);
  const float down = std::clamp(std::floor((room.y + gap.y) / (em(10.0F) + gap.y)), 1.0F, rows);
  const ImVec2 size{(inner + gap.x) / static_cast<float>(across) - gap.x,
                    std::clamp((room.y + gap.y) / down - gap.y, em(8.0F), em(30.0F))};
  float left = 0.0F;
  for (const LengthPlot& p : plots) left = std::max(left, left_room(p.plot));
  ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, gap);
  for (std::size_t i = 0; i < plots.size(); ++i) {
    if (i % across > 0) ImGui::SameLine();
    const std::optional<double> pointed = draw_plot(plots[i].plot, size, left);
    state.places.note_item(fmt::format("curve {}", plots[i].place));
    if (pointed && plots[i].over_length) out.push_back(cmd::scrub_length(*pointed / s.length(1.0)));
  }
  if (any_missing(s)) {
    if (plots.size() % across > 0) ImGui::SameLine();
    missing(s, size);
  }
  ImGui::PopStyleVar();
  ImGui::EndChild();
}

}  // namespace laywright
