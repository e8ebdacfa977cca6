#include "session/lesson_look.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "scene/camera.h"

namespace laywright {
namespace {

constexpr double upper = 0.7;  // cosine: within an eighth of a turn from the top

// In fiber diameters: what is seen around one place, and at most of a whole edge.
constexpr double around_place_d = 14.0, around_edge_d = 22.0;

bool is_up(const FindingSpot& spot) { return std::cos(spot.angle) > upper; }

bool is_first(const FindingSpot& one, const FindingSpot& other) {
  return is_up(one) != is_up(other) ? is_up(one) : one.end_node < other.end_node;
}

// A wedge that begins at the angle, its face looked at along the fiber and a little from outside. The barrel takes no more than
// the lowest part of the picture.
View cut_at(View view, double barrel_mm, double x_mm, double r_mm, double angle, double frame_mm) {
  constexpr double quarter = 0.5 * std::numbers::pi, from_outside = 0.25, of_barrel = 0.2;
  view.wedge = Sector{angle, angle + quarter};
  const Vec3 outward = in_space(0.0, 1.0, angle), onward{0.0, -std::sin(angle), std::cos(angle)};
  view.camera = turned(view.camera, onward + from_outside * outward);
  const double px_mm = frame_mm / std::max(1, std::min(view.width_px, view.height_px));
  view.camera.distance_mm = distance_for(view, px_mm);
  const double lowest_mm = barrel_mm + (0.5 - of_barrel) * px_mm * view.height_px;
  view.camera.target = in_space(x_mm, std::max(r_mm, lowest_mm), angle);
  return view;
}

View at_edge(const View& whole, const std::array<WoundPtr, 2>& builds, Side side) {
  const Plan& plan = builds[0]->plan();
  const double d = plan.fiber().diameter_mm, barrel = 0.5 * plan.spool().barrel_diameter_mm;
  double greatest = barrel;
  for (const WoundPtr& build : builds)
    greatest = std::max(greatest, 0.5 * build->measurements().outer_diameter.greatest_mm);
  const double depth = greatest - barrel;
  const double frame = std::clamp(1.6 * depth, around_place_d * d, around_edge_d * d);
  // The flange stands at the picture's edge.
  const double inward = 0.38 * frame;
  const double x = side == Side::left ? inward : plan.spool().inside_width_mm - inward;
  return cut_at(whole, barrel, x, barrel, 0.0, frame);
}

}  // namespace

FirstSpot first_spot(const std::array<WoundPtr, 2>& builds, const Sought& sought) {
  FirstSpot first{*builds[static_cast<std::size_t>(sought.in)], std::nullopt};
  const auto& findings = first.wound.measurements().findings;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].kind != sought.kind || (sought.side && findings[i].side != sought.side)) continue;
    for (const FindingSpot& spot : spots_of(first.wound.source, i)) {
      if (!first.spot || is_first(spot, *first.spot)) first.spot = spot;
    }
  }
  return first;
}

std::optional<FindingSpot> upright_spot(const Wound& wound, std::size_t finding) {
  const std::vector<FindingSpot> spots = spots_of(wound.source, finding);
  if (spots.empty()) return std::nullopt;
  const auto up = std::find_if(spots.begin(), spots.end(), is_up);
  if (up != spots.end()) return *up;
  if (is_edge(wound.measurements().findings[finding].kind)) return edge_spot_above(wound.source, finding, upper);
  return spots.front();
}

double laid_at(const Wound& wound, const FindingSpot& spot, FindingKind kind) {
  const double end = static_cast<double>(spot.end_node) / static_cast<double>(wound.source.stations());
  // Of a gap, both its turns; of all others, a little more than the place itself.
  return end + (kind == FindingKind::gap ? 1.25 : 0.25);
}

View close_view(View whole, const Wound& wound, const FindingSpot& spot, FindingKind kind) {
  const Spool& spool = wound.plan().spool();
  const double d = wound.plan().fiber().diameter_mm;
  double frame = (is_edge(kind) ? around_edge_d : around_place_d) * d;
  if (kind == FindingKind::flange_gap) {
    // From its middle to the flange, twice on each side.
    const double half = std::min(spot.x_mm, spool.inside_width_mm - spot.x_mm);
    frame = std::max(frame, 4.0 * half);
  }
  return cut_at(std::move(whole), 0.5 * spool.barrel_diameter_mm, spot.x_mm, spot.heart_mm, spot.angle, frame);
}

View close_view(View whole, const std::array<WoundPtr, 2>& builds, const LookAt& look) {
  if (!look.finding) return at_edge(whole, builds, *look.side);
  const auto [own, spot] = first_spot(builds, *look.finding);
  return spot ? close_view(std::move(whole), own, *spot, look.finding->kind) : whole;
}

}  // namespace laywright
