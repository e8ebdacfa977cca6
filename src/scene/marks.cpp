#include "scene/marks.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/units.h"
#include "scene/coordinates.h"
#include "scene/covering.h"
#include "scene/palette.h"

namespace laywright {

namespace {

struct Look {
  MarkShape shape = MarkShape::glyph;
  Glyph glyph = Glyph::none;
  bool dashed = false;
};

Look look_of(FindingKind kind) {
  switch (kind) {
    case FindingKind::gap: return {MarkShape::band, Glyph::none, false};
    case FindingKind::flange_gap: return {MarkShape::hatch, Glyph::none, false};
    case FindingKind::pile_up: return {MarkShape::zone, Glyph::none, false};
    case FindingKind::edge_valley: return {MarkShape::zone, Glyph::none, true};
    case FindingKind::ride_up: return {MarkShape::glyph, Glyph::triangle_up, false};
    case FindingKind::dropped_turn: return {MarkShape::glyph, Glyph::triangle_down, false};
    case FindingKind::bridge: return {MarkShape::glyph, Glyph::arch, false};
    case FindingKind::ribbon: return {MarkShape::glyph, Glyph::bars, false};
    case FindingKind::rim_overrun: return {MarkShape::glyph, Glyph::diamond, false};
  }
  return {};
}

// Highest fiber under a mark, looked up at places spread over it.
struct Height {
  double outer_mm = 0.0;
  bool covered = false;  // fiber of the view lies there that belongs to a later layer
};

Height height_under(const SceneSource& source, const View& view, const Mark& mark, std::size_t end_of_finding) {
  constexpr int across = 5, around = 8;
  const VisibleFiber fiber = visible_fiber(source, view);
  const Build& build = source.build();
  const double radius = 0.5 * source.d();
  Height height{source.barrel_radius(0.5 * (mark.x_from_mm + mark.x_to_mm)), false};
  for (int i = 0; i < across; ++i) {
    const double x = mark.x_from_mm + (mark.x_to_mm - mark.x_from_mm) * (i + 0.5) / across;
    for (int j = 0; j < around; ++j) {
      const double angle = mark.sector.from + (mark.sector.to - mark.sector.from) * (j + 0.5) / around;
      const std::size_t station = nearest_station(source, angle);
      const auto top = newest_over(source, station, x, 0, std::min(end_of_finding, fiber.wind_end));
      if (top) height.outer_mm = std::max(height.outer_mm, build.nodes.r(*top) + radius);
      const auto later = newest_over(source, station, x, std::max(end_of_finding, fiber.first), fiber.end);
      height.covered = height.covered || later.has_value();
    }
  }
  return height;
}

// Where the face of a cut goes through the angle: the direction that it looks in.
std::optional<Vec3> face_at(const std::vector<Sector>& removed, double angle) {
  constexpr double rounding = 1e-9;
  const auto here = [angle](double other) { return std::abs(std::remainder(angle - other, full_turn)) < rounding; };
  const Vec3 onward{0.0, -std::sin(angle), std::cos(angle)};
  for (const Sector& sector : removed) {
    if (sector.to - sector.from >= full_turn) continue;
    if (here(sector.from)) return onward;
    if (here(sector.to)) return -onward;
  }
  return std::nullopt;
}

class SpotMarker {
 public:
  SpotMarker(const SceneSource& source, const View& view)
      : source_(source), view_(view), fiber_(visible_fiber(source, view)), removed_(removed_sectors(view)) {}

  [[nodiscard]] MarkSpot marked(const FindingSpot& spot, MarkShape shape, bool with_path) const {
    MarkSpot marked{spot, {}, false, false, in_space(0.0, 1.0, spot.angle), {}};
    const std::optional<Vec3> face = face_at(removed_, spot.angle);
    marked.place = face ? spot.heart() : spot.outer();
    if (face) marked.facing = *face;
    // On the very edge of a cut, rounding must not decide.
    marked.shown = fiber_.shows(spot.node) && within_x(spot.x_mm) && (face || !is_removed(removed_, spot.angle));
    // A zone is its surface as its layer left it; anything else is hidden by whatever was laid over it.
    const std::size_t since =
        shape == MarkShape::zone ? source_.build().end_of(static_cast<std::size_t>(spot.layer) - 1) : spot.node + 1;
    marked.covered = !face && newest_over(source_, nearest_station(source_, spot.angle), spot.x_mm,
                                          std::max(since, fiber_.first), fiber_.end)
                                  .has_value();
    if (shape == MarkShape::glyph && with_path) add_paths(marked);
    return marked;
  }

 private:
  [[nodiscard]] bool within_x(double x) const {
    return x >= view_.x_from_mm.value_or(x) && x <= view_.x_to_mm.value_or(x);
  }

  void add_paths(MarkSpot& spot) const {
    constexpr std::size_t most_each_way = 1500;
    const NodeStore& nodes = source_.build().nodes;
    const std::size_t begin = std::max(spot.first_node, spot.node - std::min(spot.node, most_each_way));
    // A run of one node is drawn as far as to the next.
    const std::size_t end =
        std::min({std::max(spot.end_node, spot.node + 2), spot.node + most_each_way, nodes.size()});
    bool goes_on = false;
    for (std::size_t node = begin; node < end; ++node) {
      const double angle =
          full_turn * static_cast<double>(node % source_.stations()) / static_cast<double>(source_.stations());
      const bool here = fiber_.shows(node) && within_x(nodes.x(node)) && !is_removed(removed_, angle);
      if (here && !goes_on) spot.paths.emplace_back();
      if (here) spot.paths.back().push_back(in_space(nodes.x(node), nodes.r(node) + 0.5 * source_.d(), angle));
      goes_on = here;
    }
    std::erase_if(spot.paths, [](const std::vector<Vec3>& path) { return path.size() < 2; });
  }

  const SceneSource& source_;
  const View& view_;
  VisibleFiber fiber_;
  std::vector<Sector> removed_;
};

}  // namespace

Mark mark_of(const SceneSource& source, const View& view, std::size_t index) {
  const Finding& finding = source.measurements().findings[index];
  const Look look = look_of(finding.kind);
  Mark mark;
  mark.finding = index;
  mark.kind = finding.kind;
  mark.shape = look.shape;
  mark.glyph = look.glyph;
  mark.dashed = look.dashed;
  mark.colour = finding_rgba(finding.kind);
  mark.x_from_mm = finding.x_mm[0];
  mark.x_to_mm = finding.x_mm[1];
  mark.sector = {finding.angle_deg[0] * rad_per_deg,
                 std::min(finding.angle_deg[1] * rad_per_deg, finding.angle_deg[0] * rad_per_deg + full_turn)};
  mark.chosen = view.chosen_finding == index;
  const std::size_t last =
      std::min(static_cast<std::size_t>(std::max(1, finding.last_layer)), source.build().strokes.size());
  const Height height = height_under(source, view, mark, source.build().end_of(last - 1));
  mark.radius_mm = height.outer_mm;
  mark.covered = height.covered;
  const double angle = 0.5 * (mark.sector.from + mark.sector.to);
  mark.facing = in_space(0.0, 1.0, angle);
  mark.place = in_space(0.5 * (mark.x_from_mm + mark.x_to_mm), mark.radius_mm, angle);
  const SpotMarker marker(source, view);
  // Of a ribbon every spot is a whole stroke; all of them would hide the wind.
  for (const FindingSpot& spot : spots_of(source, index)) {
    const bool with_path = finding.kind != FindingKind::ribbon || mark.spots.empty();
    mark.spots.push_back(marker.marked(spot, mark.shape, with_path));
  }
  if (mark.spots.empty()) return mark;
  const MarkSpot& worst = mark.spots.front();
  mark.facing = worst.facing;
  mark.place = worst.place;
  mark.covered = worst.covered;
  return mark;
}

std::vector<Mark> make_marks(const SceneSource& source, const View& view) {
  std::vector<Mark> marks;
  if (!view.findings) return marks;
  const VisibleFiber fiber = visible_fiber(source, view);
  if (fiber.first == fiber.end) return marks;
  const int first_layer = static_cast<int>(source.stroke_of(fiber.first)) + 1;
  const int last_layer = static_cast<int>(source.stroke_of(fiber.end - 1)) + 1;
  const double end_turn = static_cast<double>(fiber.wind_end) / static_cast<double>(source.stations());
  const std::vector<Finding>& findings = source.measurements().findings;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& finding = findings[i];
    if (finding.turn > end_turn || finding.layer > last_layer || finding.last_layer < first_layer) continue;
    if (finding.x_mm[1] < view.x_from_mm.value_or(finding.x_mm[1])) continue;
    if (finding.x_mm[0] > view.x_to_mm.value_or(finding.x_mm[0])) continue;
    marks.push_back(mark_of(source, view, i));
  }
  return marks;
}

std::vector<Vec3> outline_of(const Mark& mark) {
  const double span = mark.sector.to - mark.sector.from;
  const int steps = std::max(1, static_cast<int>(std::ceil(span / (3.0 * rad_per_deg) - 1e-9)));
  const bool all_round = span >= full_turn * (1.0 - 1e-9);
  std::vector<Vec3> places;
  const auto add = [&](double x, int step) {
    // The ring ends in the very place where it began.
    const int at = all_round ? step % steps : step;
    places.push_back(in_space(x, mark.radius_mm, mark.sector.from + span * at / steps));
  };
  for (int i = 0; i <= steps; ++i) add(mark.x_from_mm, i);
  for (int i = steps; i >= 0; --i) add(mark.x_to_mm, i);
  if (!all_round) places.push_back(places.front());
  return places;
}

}  // namespace laywright
