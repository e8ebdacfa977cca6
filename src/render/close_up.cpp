#include "render/close_up.h"

#include <algorithm>

#include "base/units.h"
#include "render/seen_window.h"

namespace laywright {
namespace {

double outer_radius(const Shell& shell) {
  const auto greatest = std::max_element(shell.radius_mm.begin(), shell.radius_mm.end());
  return greatest == shell.radius_mm.end() ? 1.0 : static_cast<double>(*greatest);
}

// The mean over the surface: where most of the fiber is.
double usual_radius(const Shell& shell) {
  double sum = 0.0;
  for (const float radius : shell.radius_mm) sum += static_cast<double>(radius);
  return shell.radius_mm.empty() ? 1.0 : sum / static_cast<double>(shell.radius_mm.size());
}

bool contains(const Sector& outer, const Sector& inner) {
  if (outer.to - outer.from >= full_turn - 1e-9) return true;
  for (const double turn : {-full_turn, 0.0, full_turn})
    if (outer.from <= inner.from + turn && inner.to + turn <= outer.to) return true;
  return false;
}

bool contains(const FaceWindow& outer, const FaceWindow& inner) {
  return inner.x_from >= inner.x_to || (outer.x_from <= inner.x_from && inner.x_to <= outer.x_to &&
                                        outer.r_from <= inner.r_from && inner.r_to <= outer.r_to);
}

SurfaceWindow seen_surface(const Scene& scene, const View& view, double usual_radius_mm) {
  return seen_of_cylinder(view, usual_radius_mm, scene.x_from_mm, scene.x_to_mm);
}

// Room around what is seen, so that a small move of the camera asks for nothing new.
SurfaceWindow grown(SurfaceWindow window, const Scene& scene) {
  const double x_margin = 0.15 * (window.x_to_mm - window.x_from_mm) + 2.0 * scene.shell.fiber_diameter_mm;
  const double angle_margin = 0.15 * (window.sector.to - window.sector.from);
  window.x_from_mm = std::max(window.x_from_mm - x_margin, scene.x_from_mm);
  window.x_to_mm = std::min(window.x_to_mm + x_margin, scene.x_to_mm);
  window.sector = {window.sector.from - angle_margin, window.sector.to + angle_margin};
  return window;
}

FaceWindow grown(FaceWindow window, const FaceWindow& whole) {
  const double margin = 0.15 * std::max(window.x_to - window.x_from, window.r_to - window.r_from);
  return {std::max(window.x_from - margin, whole.x_from), std::min(window.x_to + margin, whole.x_to),
          std::max(window.r_from - margin, whole.r_from), std::min(window.r_to + margin, whole.r_to)};
}

}  // namespace

double fiber_px(const Scene& scene, const View& view, double outer_radius_mm) {
  double distance = nearest_distance(view, outer_radius_mm, scene.x_from_mm, scene.x_to_mm);
  if (view.camera.projection == Projection::parallel) distance = view.camera.distance_mm;
  return scene.shell.fiber_diameter_mm / mm_per_px(view) * view.camera.distance_mm / std::max(distance, 1e-6);
}

CloseUpSettings close_up_beyond(const Shell& shell) {
  CloseUpSettings settings;
  const double columns = shell.grid.texels() > 0 ? shell.fiber_diameter_mm / shell.grid.column_mm : 0.0;
  settings.from_px = std::clamp(columns, settings.from_px, 8.0);
  settings.full_px = settings.from_px + 2.0;
  return settings;
}

double close_up_share(double fiber_px, const CloseUpSettings& settings) {
  return std::clamp((fiber_px - settings.from_px) / (settings.full_px - settings.from_px), 0.0, 1.0);
}

CloseUp make_close_up(const SceneSource& source, const Scene& scene, const View& view,
                      const CloseUpSettings& settings) {
  CloseUp close_up;
  close_up.outer_radius_mm = outer_radius(scene.shell);
  close_up.usual_radius_mm = usual_radius(scene.shell);
  close_up.share = close_up_share(fiber_px(scene, view, close_up.outer_radius_mm), settings);
  if (close_up.share <= 0.0) return close_up;
  close_up.window = seen_surface(scene, view, close_up.usual_radius_mm);
  if (close_up.window.x_from_mm < close_up.window.x_to_mm) {
    close_up.window = grown(close_up.window, scene);
    Strands strands = make_strands(source, view, scene.shell, close_up.window, settings.most_strand_points);
    if (strands.complete) close_up.strands = std::move(strands);
  }
  for (const CutFace& face : scene.faces) {
    FaceWindow window = seen_of_face(view, face.angle, face.image.window);
    std::vector<FaceDisc> discs;
    if (window.x_from < window.x_to) window = grown(window, face.image.window);
    if (window.x_from < window.x_to) discs = face_discs(source, view, face.angle, window);
    if (discs.size() > settings.most_discs) discs.clear();
    close_up.discs.push_back(std::move(discs));
    close_up.face_windows.push_back(window);
  }
  return close_up;
}

bool covers(const CloseUp& close_up, const Scene& scene, const View& view, const CloseUpSettings& settings) {
  // Where nothing is asked for any more, what is there must go: from afar it would stand out as a patch.
  const bool asked_for = close_up_share(fiber_px(scene, view, close_up.outer_radius_mm), settings) > 0.0;
  if (!asked_for) return close_up.share <= 0.0;
  if (close_up.share <= 0.0 || close_up.face_windows.size() != scene.faces.size()) return false;
  const SurfaceWindow seen = seen_surface(scene, view, close_up.usual_radius_mm);
  if (seen.x_from_mm < close_up.window.x_from_mm || seen.x_to_mm > close_up.window.x_to_mm) return false;
  if (!contains(close_up.window.sector, seen.sector)) return false;
  for (std::size_t i = 0; i < scene.faces.size(); ++i)
    if (!contains(close_up.face_windows[i], seen_of_face(view, scene.faces[i].angle, scene.faces[i].image.window)))
      return false;
  return true;
}

}  // namespace laywright
