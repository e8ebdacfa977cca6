#include "scene/finding_spot.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "scene/covering.h"
#include "scene/spool_solid.h"

namespace laywright {

namespace {

double angle_at(const SceneSource& source, std::size_t node) {
  return 2.0 * std::numbers::pi * static_cast<double>(node % source.stations()) /
         static_cast<double>(source.stations());
}

FindingSpot on_fiber(const SceneSource& source, const FindingPlace& place) {
  const NodeStore& nodes = source.build().nodes;
  FindingSpot spot;
  spot.first_node = place.first_node;
  spot.end_node = place.end_node;
  spot.node = std::min(place.node, nodes.size() - 1);
  spot.layer = static_cast<int>(source.stroke_of(spot.node)) + 1;
  spot.x_mm = nodes.x(spot.node);
  spot.angle = angle_at(source, spot.node);
  spot.heart_mm = nodes.r(spot.node);
  spot.outer_mm = spot.heart_mm + 0.5 * source.d();
  return spot;
}

// The fiber of a gap is that on its left.
FindingSpot in_gap(const SceneSource& source, const FindingPlace& place) {
  FindingSpot spot = on_fiber(source, place);
  spot.x_mm += 0.5 * (source.d() + place.size_mm);
  spot.outer_mm = spot.heart_mm;
  return spot;
}

FindingSpot at_flange(const SceneSource& source, const FindingPlace& place, Side side) {
  FindingSpot spot = on_fiber(source, place);
  const double half = 0.5 * source.d();
  const bool left = side == Side::left;
  const double face = left ? left_face_x(source.plan(), spot.heart_mm, spot.angle)
                           : right_face_x(source.plan(), spot.heart_mm, spot.angle);
  spot.x_mm = 0.5 * (face + spot.x_mm + (left ? -half : half));
  spot.outer_mm = spot.heart_mm;
  return spot;
}

// Where the surface of a zone at a flange is highest or lowest, once a layer is laid, among the angles whose cosine is greater.
FindingSpot on_surface(const SceneSource& source, const Finding& finding, const FindingPlace& place,
                       double least_cosine = -2.0) {
  constexpr int across = 7;
  constexpr std::size_t around = 72;
  FindingSpot best = on_fiber(source, place);
  const std::size_t end = source.build().end_of(static_cast<std::size_t>(best.layer) - 1);
  const bool highest = finding.kind == FindingKind::pile_up;
  bool any = false;
  for (std::size_t i = 0; i < around; ++i) {
    const std::size_t station = i * source.stations() / around;
    if (std::cos(angle_at(source, station)) <= least_cosine) continue;
    for (int j = 0; j < across; ++j) {
      const double x = finding.x_mm[0] + (finding.x_mm[1] - finding.x_mm[0]) * (j + 0.5) / across;
      const auto top = newest_over(source, station, x, 0, end);
      if (!top) continue;
      const double outer = source.build().nodes.r(*top) + 0.5 * source.d();
      if (any && (highest ? outer <= best.outer_mm : outer >= best.outer_mm)) continue;
      any = true;
      best.node = *top;
      best.x_mm = source.build().nodes.x(*top);
      best.angle = angle_at(source, *top);
      best.outer_mm = outer;
      best.heart_mm = outer - 0.5 * source.d();
    }
  }
  return best;
}

}  // namespace

std::vector<FindingSpot> spots_of(const SceneSource& source, std::size_t index) {
  const Finding& finding = source.measurements().findings[index];
  std::vector<FindingSpot> spots;
  for (const FindingPlace& place : finding.places) {
    switch (finding.kind) {
      case FindingKind::gap: spots.push_back(in_gap(source, place)); break;
      case FindingKind::flange_gap:
        spots.push_back(at_flange(source, place, finding.side.value_or(Side::left)));
        break;
      case FindingKind::pile_up:
      case FindingKind::edge_valley: return {on_surface(source, finding, place)};
      default: spots.push_back(on_fiber(source, place));
    }
  }
  return spots;
}

FindingSpot edge_spot_above(const SceneSource& source, std::size_t index, double least_cosine) {
  const Finding& finding = source.measurements().findings[index];
  return on_surface(source, finding, finding.places.front(), least_cosine);
}

}  // namespace laywright
