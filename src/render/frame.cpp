#include "render/frame.h"

#include <algorithm>

#include <glm/gtc/matrix_transform.hpp>

#include "base/units.h"

namespace laywright {
std::vector<Sector> left_by(const std::vector<Sector>& removed) {
  if (removed.empty()) return {{0.0, full_turn}};
  std::vector<Sector> sorted = removed;
  std::sort(sorted.begin(), sorted.end(), [](const Sector& a, const Sector& b) { return a.from < b.from; });
  std::vector<Sector> left;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const bool last = i + 1 == sorted.size();
    const double until = last ? sorted.front().from + full_turn : sorted[i + 1].from;
    if (sorted[i].to < until - 1e-9) left.push_back({sorted[i].to, until});
  }
  return left;
}

Frame make_frame(const Scene& scene, const View& view, const Sphere& sphere, int width, int height) {
  Frame frame;
  const double aspect = static_cast<double>(view.width_px) / view.height_px;
  frame.to_eye = glm::mat4(world_to_eye(view.camera));
  frame.from_eye = glm::mat4(glm::inverse(world_to_eye(view.camera)));
  const Sphere depths = scene.guide ? depths_with(sphere, *scene.guide, view.camera) : sphere;
  frame.to_clip = glm::mat4(eye_to_clip(view.camera, aspect, depths.centre, depths.radius));
  frame.parallel = view.camera.projection == Projection::parallel;
  frame.width = width;
  frame.height = height;
  frame.factor = static_cast<float>(height) / static_cast<float>(view.height_px);
  frame.colours = theme_colours(scene.theme);
  frame.colours.spool = scene.spool_colour;
  frame.sheen = scene.sheen;
  frame.glass = glass_flanges(view.camera, scene.spool.inside_width_mm, scene.flanges_see_through);
  frame.x_range = {static_cast<float>(scene.x_from_mm), static_cast<float>(scene.x_to_mm)};
  frame.shown = left_by(scene.removed);
  frame.mm_per_px = mm_per_px(view);
  frame.fiber_radius_mm = static_cast<float>(scene.shell.fiber_diameter_mm / 2);
  return frame;
}

Frame moved(Frame frame, glm::vec2 pixels) {
  const glm::vec3 shift(2.0F * pixels.x / static_cast<float>(frame.width),
                        2.0F * pixels.y / static_cast<float>(frame.height), 0.0F);
  frame.to_clip = glm::translate(glm::mat4(1.0F), shift) * frame.to_clip;
  return frame;
}

void Frame::use(const Program& program) const {
  program.use();
  program.set("to_eye", to_eye);
  program.set("to_clip", to_clip);
  program.set("parallel", parallel ? 1.0F : 0.0F);
}

float Frame::brightness(const Vec3& normal) const {
  // The directions of common.glsl. A cut is a drawing: it stays light whatever side it is seen from.
  const glm::vec3 key(-0.422F, 0.625F, 0.657F);
  const glm::vec3 eye_normal = glm::mat3(to_eye) * glm::vec3(normal);
  return 0.78F + 0.22F * std::max(glm::dot(eye_normal, key), 0.0F);
}

}  // namespace laywright
