#include "scene/finding_view.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <glm/geometric.hpp>

#include "base/units.h"
#include "scene/camera.h"
#include "scene/marks.h"
#include "scene/sight.h"

namespace laywright {

namespace {

constexpr double quarter = 0.5 * std::numbers::pi;

bool is_within_the_wind(FindingKind kind) {
  return kind == FindingKind::dropped_turn || kind == FindingKind::bridge;
}

bool is_at_a_flange(FindingKind kind) { return kind == FindingKind::flange_gap || is_edge(kind); }

// The angle at which a place is, and the direction of rising angles there.
Vec3 outward_at(double angle) { return in_space(0.0, 1.0, angle); }
Vec3 onward_at(double angle) { return {0.0, -std::sin(angle), std::cos(angle)}; }

// At `place` in the middle, from so far, but no farther than the whole spool is seen from.
Camera camera_at(const SceneSource& source, const View& view, const Vec3& place, const Vec3& toward_eye,
                 double distance_mm) {
  Camera camera = turned(view.camera, toward_eye);
  View whole = view;
  whole.camera = camera;
  const double farthest = fit_camera(source.plan(), whole).distance_mm;
  camera.target = place;
  camera.distance_mm = std::min(farthest, distance_mm);
  return camera;
}

// Over a span from low to high a window is moved, not farther than `most`, so that no more than a share of it reaches over
// either end.
double moved_within(double middle, double window, double low, double high, double over, double most) {
  const double from = low + (0.5 - over) * window, to = high - (0.5 - over) * window;
  const double wanted = from <= to ? std::clamp(middle, from, to) : 0.5 * (low + high);
  return std::clamp(wanted, middle - most * window, middle + most * window);
}

// A place near a flange or the barrel stands aside, so that the picture is filled with fiber. `radial`: on the face of a
// cut, where the layers are seen from the side.
Camera filled_with_fiber(const SceneSource& source, const View& view, const Vec3& place, bool radial) {
  constexpr double over = 0.08, most = 0.34, square = 0.8;
  View moved = view;
  Camera& camera = moved.camera;
  const double high = mm_per_px(view) * view.height_px, wide = mm_per_px(view) * view.width_px;
  // The spool's axis lies across the picture, or stands upright in it, as seen from above.
  const double across = std::abs(right_of(camera).x), steep = std::abs(up_of(camera).x);
  if (across > square || steep > square) {
    const double width = source.plan().spool().inside_width_mm;
    const double window = across > square ? wide / across : high / steep;
    camera.target.x = moved_within(place.x, window, 0.0, width, over, most);
  }
  const Vec3 outward = in_space(0.0, 1.0, angle_of(place));
  const double upright = std::abs(glm::dot(up_of(camera), outward));
  if (radial && upright > square) {
    const double r = radius_of(place), top = 0.5 * source.measurements().outer_diameter.greatest_mm;
    camera.target +=
        outward * (moved_within(r, high / upright, source.barrel_radius(place.x), std::max(top, r), over, most) - r);
  }
  return camera;
}

// Whether the way from a place to the eye goes through a flange of glass: seen so, it is pale.
bool is_behind_glass(const SceneSource& source, const View& view, const Vec3& place) {
  const Spool& spool = source.plan().spool();
  const GlassFlanges glass = glass_flanges(view.camera, spool.inside_width_mm, false);
  if (!glass.left && !glass.right) return false;
  const Vec3 way =
      view.camera.projection == Projection::parallel ? -forward_of(view.camera) : eye_of(view.camera) - place;
  const double share = ((glass.left ? 0.0 : spool.inside_width_mm) - place.x) / way.x;
  return radius_of(place + share * way) < 0.5 * spool.flange_diameter_mm;
}

// A cut to try, and from where to look at it.
struct Opening {
  View view;
  std::vector<Vec3> toward_eye;
  double thick_px = 12.0;
};

class Opener {
 public:
  Opener(const SceneSource& source, const View& view, std::size_t finding)
      : source_(source),
        finding_(source.measurements().findings[finding]),
        mark_(mark_of(source, view, finding)),
        layer_(mark_.spots.empty() ? finding_.last_layer : mark_.spots.front().layer),
        angle_(mark_.spots.empty() ? angle_of(mark_.place) : mark_.spots.front().angle) {
    base_ = view;
    base_.findings = true;
    base_.chosen_finding = finding;
    undo_what_takes_it_away();
  }

  [[nodiscard]] View open() const { return best_of(all()); }

 private:
  [[nodiscard]] static Vec3 place_of(const Mark& mark) {
    return mark.spots.empty() ? mark.place : mark.spots.front().place;
  }

  // The first that shows the place.
  [[nodiscard]] View best_of(const std::vector<Opening>& openings) const {
    for (const bool see_through : {base_.flanges_see_through, true}) {
      for (const Opening& opening : openings) {
        for (const Vec3& toward : opening.toward_eye) {
          View view = opening.view;
          view.flanges_see_through = see_through;
          if (look(view, toward, opening.thick_px)) return view;
        }
      }
    }
    View view = openings.front().view;
    look(view, openings.front().toward_eye.front(), openings.front().thick_px);
    return view;
  }

  void undo_what_takes_it_away() {
    if (base_.until_turn && *base_.until_turn < laid_at()) base_.until_turn.reset();
    if (base_.first_layer > lowest_layer()) base_.first_layer = 1;
    if (base_.last_layer && *base_.last_layer < layer_) base_.last_layer = layer_;
    const double d = source_.d();
    if (base_.x_from_mm && *base_.x_from_mm > mark_.place.x - d) base_.x_from_mm.reset();
    if (base_.x_to_mm && *base_.x_to_mm < mark_.place.x + d) base_.x_to_mm.reset();
    if (is_removed(removed_sectors(base_), angle_)) close_cuts(base_);
  }

  // The surface of a valley can be of an earlier layer than the one that left it so.
  [[nodiscard]] int lowest_layer() const {
    if (mark_.spots.empty()) return layer_;
    return static_cast<int>(source_.stroke_of(mark_.spots.front().node)) + 1;
  }

  static void close_cuts(View& view) {
    view.wedge.reset();
    view.axial_cut_rad.reset();
  }

  // The turn at which all that makes the place is laid: of a gap, both its turns.
  [[nodiscard]] double laid_at() const {
    if (mark_.spots.empty()) return finding_.turn;
    const double end = static_cast<double>(mark_.spots.front().end_node) / static_cast<double>(source_.stations());
    return finding_.kind == FindingKind::gap ? end + 1.25 : end;
  }

  // From the least change to the greatest.
  [[nodiscard]] std::vector<Opening> all() const {
    std::vector<Opening> openings;
    openings.push_back(from_outside(base_));
    View closed = base_;
    close_cuts(closed);
    openings.push_back(from_outside(closed));
    if (is_within_the_wind(finding_.kind)) add_sections(closed, openings);
    View peeled = closed;
    peeled.last_layer = layer_;
    openings.push_back(from_outside(peeled));
    peeled.until_turn = laid_at();
    openings.push_back(from_outside(peeled));
    if (!is_within_the_wind(finding_.kind)) add_sections(closed, openings);
    return openings;
  }

  // Square to the surface; at a flange rather askew, so that its face stands behind the place.
  [[nodiscard]] Opening from_outside(const View& view) const {
    const Vec3 outward = outward_at(angle_);
    const double width = source_.plan().spool().inside_width_mm;
    const double inward = mark_.place.x < 0.5 * width ? 1.0 : -1.0;
    const auto askew = [&](double degrees) {
      const double lean = degrees * rad_per_deg;
      return std::cos(lean) * outward + std::sin(lean) * Vec3{inward, 0.0, 0.0};
    };
    Opening opening{view, {}, 12.0};
    if (is_at_a_flange(finding_.kind)) opening.toward_eye = {askew(35.0), askew(20.0)};
    for (const double degrees : {0.0, 10.0, -10.0, 25.0, -25.0}) opening.toward_eye.push_back(askew(degrees));
    return opening;
  }

  // A wedge beginning or ending at the place, looked at along the fiber and a little from outside.
  void add_sections(const View& view, std::vector<Opening>& openings) const {
    const Vec3 onward = onward_at(angle_), outward = outward_at(angle_);
    // First the face that is turned towards where people look from.
    const bool first_onward = onward.z + 0.5 * onward.y > 0.0;
    for (const bool is_onward : {first_onward, !first_onward}) {
      View cut = view;
      cut.wedge = is_onward ? Sector{angle_, angle_ + quarter} : Sector{angle_ - quarter, angle_};
      const Vec3 square = is_onward ? onward : -onward;
      openings.push_back({cut, {glm::normalize(square + 0.35 * outward), square}, 20.0});
    }
  }

  // Puts the camera there; true if it sees the place.
  bool look(View& view, const Vec3& toward_eye, double thick_px) const {
    const Mark mark = mark_of(source_, view, *view.chosen_finding);
    const Vec3 place = place_of(mark);
    view.camera = camera_at(source_, view, place, toward_eye, distance_at(view, thick_px));
    const bool radial = view.wedge && !(view.wedge == base_.wedge);
    view.camera = filled_with_fiber(source_, view, place, radial);
    const bool there = mark.spots.empty() ? !is_removed(removed_sectors(view), angle_) : mark.spots.front().shown;
    if (!view.flanges_see_through && is_behind_glass(source_, view, place)) return false;
    return there && in_the_way(source_, view, place).nothing();
  }

  // At which the fiber is so thick; farther where turns lie far apart, so that several are in the picture.
  [[nodiscard]] double distance_at(const View& view, double thick_px) const {
    const double several = finding_.kind == FindingKind::ribbon ? 8.0 * source_.plan().traverse().pitch_mm : 0.0;
    return distance_for(view, std::max(source_.d() / thick_px, several / std::max(1, view.height_px)));
  }

  const SceneSource& source_;
  const Finding& finding_;
  Mark mark_;
  int layer_;
  double angle_;
  View base_;
};

}  // namespace

View view_of_finding(const SceneSource& source, const View& view, std::size_t finding) {
  return Opener(source, view, finding).open();
}

View view_of_leaving(const SceneSource& source, const View& view, std::size_t node, std::size_t end_node) {
  constexpr double thick_px = 12.0;
  const auto stations = static_cast<double>(source.stations());
  View shown = with_nothing_away(view);
  shown.until_turn = static_cast<double>(end_node) / stations;
  const double angle = 2.0 * std::numbers::pi * static_cast<double>(node % source.stations()) / stations;
  const NodeStore& nodes = source.build().nodes;
  const Vec3 place = in_space(nodes.x(node), nodes.r(node) + 0.5 * source.d(), angle);
  shown.camera = camera_at(source, shown, place, outward_at(angle), distance_for(shown, source.d() / thick_px));
  return shown;
}

}  // namespace laywright
