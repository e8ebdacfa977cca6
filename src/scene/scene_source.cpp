#include "scene/scene_source.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/units.h"

namespace laywright {

namespace {

std::vector<std::uint32_t> strokes_at_turns(const Build& build) {
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  std::vector<std::uint32_t> strokes;
  std::uint32_t stroke = 0;
  for (std::size_t node = 0; node < build.nodes.size(); node += stations) {
    while (stroke + 1 < build.strokes.size() && build.strokes[stroke + 1].first_node <= node) ++stroke;
    strokes.push_back(stroke);
  }
  return strokes;
}

double in_first_turn(double angle) {
  const double rest = angle - full_turn * std::floor(angle / full_turn);
  return rest < full_turn ? rest : 0.0;
}

}  // namespace

SceneSource::SceneSource(Plan plan, std::shared_ptr<const Build> build,
                         std::shared_ptr<const Measurements> measurements, const ShellSettings& settings)
    : plan_(std::move(plan)),
      build_(std::move(build)),
      measurements_(std::move(measurements)),
      line_(*build_),
      turns_(*build_),
      stroke_at_turn_(strokes_at_turns(*build_)),
      shells_(plan_, *build_, turns_, settings),
      guide_(plan_, build_->seed, build_->turns) {}

double SceneSource::barrel_radius(double x_mm) const {
  const Spool& spool = plan_.spool();
  const double share = std::clamp(x_mm / spool.inside_width_mm, 0.0, 1.0);
  return 0.5 * (spool.barrel_diameter_mm + spool.barrel_taper_mm * share);
}

std::size_t SceneSource::stroke_of(std::size_t node) const {
  const std::vector<Stroke>& strokes = build_->strokes;
  // Nodes have 32 bits here, and so a division is quick.
  std::size_t stroke = stroke_at_turn_[static_cast<std::uint32_t>(node) / static_cast<std::uint32_t>(stations())];
  while (stroke + 1 < strokes.size() && strokes[stroke + 1].first_node <= node) ++stroke;
  return stroke;
}

double length_at_turn(const SceneSource& source, double turn) {
  const double stations = source.build().stations_per_turn;
  const double node = std::clamp(turn, 0.0, source.build().turns) * stations;
  const auto before = static_cast<std::size_t>(node);
  const double from = source.line().at(before), to = source.line().at(before + 1);
  const double last = std::min(static_cast<double>(before) + 1.0, source.build().turns * stations);
  const double span = last - static_cast<double>(before);
  return span > 0.0 ? from + (to - from) * (node - static_cast<double>(before)) / span : to;
}

double turn_at_length(const SceneSource& source, double length_mm) {
  double low = 0.0, high = source.build().turns;
  if (length_mm <= 0.0) return low;
  if (length_mm >= source.line().total()) return high;
  // Length rises with the turn: halved until a double can be halved no more.
  for (int i = 0; i < 100; ++i) {
    const double middle = 0.5 * (low + high);
    (length_at_turn(source, middle) < length_mm ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

VisibleFiber visible_fiber(const SceneSource& source, const View& view) {
  const Build& build = source.build();
  const auto layers = static_cast<int>(build.strokes.size());
  VisibleFiber fiber;
  fiber.wind_end = build.nodes.size();
  if (view.until_turn) {
    // A turn that was computed from a node may fall short of it by rounding.
    const double node = std::floor(std::max(0.0, *view.until_turn) * build.stations_per_turn + 1e-6);
    if (node < static_cast<double>(fiber.wind_end)) fiber.wind_end = static_cast<std::size_t>(node) + 1;
  }
  const int first = std::clamp(view.first_layer, 1, layers);
  const int last = std::clamp(view.last_layer.value_or(layers), 0, layers);
  fiber.first = std::min(build.strokes[static_cast<std::size_t>(first) - 1].first_node, fiber.wind_end);
  fiber.end = last == 0 ? 0 : std::min(build.end_of(static_cast<std::size_t>(last) - 1), fiber.wind_end);
  fiber.end = std::max(fiber.first, fiber.end);
  return fiber;
}

std::vector<Sector> removed_sectors(const View& view) {
  std::vector<Sector> arcs;
  const auto add = [&arcs](double from, double span) {
    if (span > 0.0) arcs.push_back({in_first_turn(from), in_first_turn(from) + std::min(span, full_turn)});
  };
  if (view.wedge) {
    const double span = view.wedge->to - view.wedge->from;
    add(view.wedge->from, std::abs(span) >= full_turn ? full_turn : in_first_turn(span));
  }
  if (view.axial_cut_rad) add(*view.axial_cut_rad, std::numbers::pi);
  if (arcs.size() < 2) return arcs;

  const Sector a = arcs[0];
  Sector b = arcs[1];
  if (b.from < a.from) b = {b.from + full_turn, b.to + full_turn};
  const bool after_a = b.from <= a.to, around_to_a = b.to >= a.from + full_turn;
  if (!after_a && !around_to_a) return arcs;
  Sector both{a.from, std::max(a.to, b.to)};
  if (!after_a) both = {b.from, std::max(b.to, a.to + full_turn)};
  if (after_a && around_to_a) both = {0.0, full_turn};
  const double span = std::min(both.to - both.from, full_turn);
  return {{in_first_turn(both.from), in_first_turn(both.from) + span}};
}

bool is_removed(const std::vector<Sector>& removed, double angle) {
  for (const Sector& sector : removed) {
    if (sector.to - sector.from >= full_turn) return true;
    const double past = in_first_turn(angle - sector.from);
    if (past > 0.0 && past < sector.to - sector.from) return true;
  }
  return false;
}

}  // namespace laywright
