#include "render/overlay_fiber.h"

#include "scene/camera.h"

namespace laywright {
namespace {

// Seen from a camera that stands beside the fiber, its far end may lie behind the eye: then the line ends where it leaves
// what is before it, to a thousandth of its length.
OverlayLine fiber_line(const Projector& project, const GuidePose& guide, glm::dvec2 from) {
  double seen = 0.0, hidden = 1.0;
  OverlayLine line{from, from};
  if (const auto end = project(guide.fiber_end)) return {from, *end};
  while (hidden - seen > 1e-3) {
    const double share = 0.5 * (seen + hidden);
    const auto at = project(glm::mix(guide.lay_point, guide.fiber_end, share));
    (at ? seen : hidden) = share;
    if (at) line.to = *at;
  }
  return line;
}

}  // namespace

std::vector<OverlayLine> free_fibers(const View& view, const std::vector<GuideInWay>& guides) {
  const Projector project(view);
  std::vector<OverlayLine> lines;
  const Vec3 right = right_of(view.camera), up = up_of(view.camera);
  for (const auto& [guide, eye_radius_mm] : guides) {
    if (const auto from = project(guide.lay_point)) lines.push_back(fiber_line(project, guide, *from));
    for (const Vec3& way : {right, up}) {
      const Vec3 half = way * eye_radius_mm;
      const auto first = project(guide.eye_middle - half), second = project(guide.eye_middle + half);
      if (first && second) lines.push_back({*first, *second});
    }
  }
  return lines;
}

}  // namespace laywright
