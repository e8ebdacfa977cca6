// Cameras: where the eye is, what it sees, and cameras that see something.
#pragma once

#include <optional>

#include <glm/mat4x4.hpp>
#include <glm/vec2.hpp>

#include "scene/scene_source.h"

namespace laywright {

struct Ray {
  Vec3 origin{0.0, 0.0, 0.0};
  Vec3 direction{0.0, 0.0, -1.0};  // length 1
};

[[nodiscard]] Vec3 eye_of(const Camera& camera);
[[nodiscard]] Vec3 forward_of(const Camera& camera);  // length 1
[[nodiscard]] Vec3 up_of(const Camera& camera);       // on the screen, length 1
[[nodiscard]] Vec3 right_of(const Camera& camera);    // length 1

// World to eye (X right, Y up, looking along -Z) and eye to clip space of OpenGL (-1 to 1 in all three). Near and far
// enclose the sphere (`centre`, `radius`) as tightly as a perspective allows.
[[nodiscard]] glm::dmat4 world_to_eye(const Camera& camera);
[[nodiscard]] glm::dmat4 eye_to_clip(const Camera& camera, double aspect, const Vec3& centre, double radius);

// Sphere around spool and wind.
struct Sphere {
  Vec3 centre{0.0, 0.0, 0.0};
  double radius = 1.0;
};
[[nodiscard]] Sphere sphere_around(const Plan& plan);

// Size of a pixel at the target, mm.
[[nodiscard]] double mm_per_px(const View& view);

// The camera's distance at which a pixel at the target is of this size, mm.
[[nodiscard]] double distance_for(View view, double mm_per_pixel);

// The camera turned so that it looks from there at its target, but no steeper than 70 degrees: straight down the spool would stand on
// its end.
[[nodiscard]] Camera turned(Camera camera, const Vec3& toward_eye);

// The ray through a place of the picture, in pixels from its upper left corner (the middle of the first pixel is at
// 0.5, 0.5). For a perspective from the eye; for a parallel picture from the plane of the eye.
[[nodiscard]] Ray ray_through(const View& view, double px, double py);

// Where places are in a picture, px; none for what is not before the eye.
class Projector {
 public:
  explicit Projector(const View& view);
  [[nodiscard]] std::optional<glm::dvec2> operator()(const Vec3& place) const;

 private:
  Vec3 eye_, forward_, right_, up_;
  glm::dvec2 middle_;
  double per_mm_;       // at the target
  double distance_mm_;  // of a perspective; 0 of a parallel picture
};
[[nodiscard]] std::optional<glm::dvec2> in_picture(const View& view, const Vec3& place);

// The camera of the view moved so that the whole spool is seen, as large as can be, its directions kept: a margin of 6 %
// of the half picture is left, or 16 % where dimension lines are shown.
[[nodiscard]] Camera fit_camera(const Plan& plan, const View& view);

}  // namespace laywright
