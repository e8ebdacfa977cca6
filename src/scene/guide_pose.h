// The guide while the wind grows: where it stands, and the free fiber between it and the spool.
#pragma once

#include "scene/camera.h"
#include "scene/spool_solid.h"

namespace laywright {

// The spool stands still in the picture, and so the guide goes round it. The free fiber is straight (the lay model's
// lag): it leaves the spool along the tangent at the lay point, towards rising angles, and is free_length long
// square to the axis; along the axis it goes as far as the guide is ahead of the lay point, which is the lag.
struct GuidePose {
  double turn = 0.0;
  double angle = 0.0;  // of the lay point, 0 to 2 pi
  double lay_r_mm = 0.0;
  Vec3 lay_point{0.0, 0.0, 0.0};  // on the fiber's centre line, between the two nodes around the turn
  Vec3 fiber_end{0.0, 0.0, 0.0};  // where the fiber leaves the eye
  Vec3 eye_middle{0.0, 0.0,
                  0.0};  // of the eye: the fiber lies in its seat, beside the middle by up to half its play

  // How far the guide is ahead of the lay point along the axis, mm, with its sign.
  [[nodiscard]] double lag_mm() const { return fiber_end.x - lay_point.x; }
};

// After so many turns, brought into the wind.
[[nodiscard]] GuidePose guide_pose(const SceneSource& source, double turn);

// A ring that the fiber goes through, and the fiber as a tube. The plan says nothing of the eye but its play: its hole
// is half as wide again as fiber and play, or 3 % of the rim's radius where that would be too small to see (estimates,
// no source); the ring is as thick as half the hole's radius.
struct GuideSolid {
  GuidePose pose;
  Mesh eye, fiber;
  double eye_radius_mm = 0.0;  // of the ring's outside
  Rgba fiber_colour;           // that of the newest fiber laid
};
[[nodiscard]] GuideSolid make_guide(const SceneSource& source, const GuidePose& pose);

// A sphere whose depths from the camera are those of `around` and of the guide; `around` where the guide is behind the
// camera.
[[nodiscard]] Sphere depths_with(const Sphere& around, const GuideSolid& guide, const Camera& camera);

}  // namespace laywright
