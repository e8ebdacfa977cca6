// What a pinhole camera sees of a spool whose axis is level. Inside the folder only. Lengths mm, picture px from the
// point that the camera looks at: u to the right, v upward.
//
// A cylinder of radius r whose axis runs at the distance D before the camera is seen between the two planes through the
// pinhole that touch it. Each lies sin(beta) = r / D off the axis' direction, so that with the axis straight ahead
//   v = f tan(beta) = f r / sqrt(D^2 - r^2);
// with the axis at the angle phi above or below, the edges are at f tan(phi +- beta), and phi and beta follow from both.
// It is touched at the depth D (1 - r^2 / D^2), nearer than the axis, where the scale along the axis is f D / (D^2 - r^2).
// What is taken from the flange for scale (f / sqrt(D^2 - R^2) px per mm) and the scale along the axis where the flange is touched,
// f D / (D^2 - R^2), stand as sqrt(1 - R^2 / D^2) to 1. Above the wind the rim ends farther away still, where its far half is
// seen: a point of the rim by the angle a from the one nearest to the camera lies at the depth D - R cos(a) and is seen at
// u = f x / (D - R cos(a)), v = f R sin(a) / (D - R cos(a)). The known inside width therefore tells D.
#pragma once

namespace laywright {

// The axis as points (x, z): a straight line that runs by `yaw_rad` away from the camera to the right.
struct Pinhole {
  double focal_px = 0.0;
  double middle_x_mm = 0.0, middle_z_mm = 0.0;  // of the axis, half way between both flanges
  double yaw_rad = 0.0;

  // At a place along the axis, from that middle.
  [[nodiscard]] double depth_mm(double along_mm) const;
};

// Half the angle that a cylinder seen between both edges fills, and how far its axis is off level.
struct SeenAngles {
  double half = 0.0, middle = 0.0;
};
[[nodiscard]] SeenAngles seen_angles(double focal_px, double top_v, double bottom_v);

// Depth of the axis at a cylinder of known radius that is seen between these edges.
[[nodiscard]] double depth_of_known(double focal_px, double radius_mm, double top_v, double bottom_v);

// The radius of a cylinder about an axis at that depth.
[[nodiscard]] double radius_at(double focal_px, double depth_mm, double top_v, double bottom_v);

// Where the cylinder of that radius whose edge is seen at u stands along the axis.
[[nodiscard]] double along_of_edge(const Pinhole& camera, double u, double radius_mm);

// A point of a flange's rim, so far round from the one nearest to the camera.
struct RimPoint {
  double u = 0.0, v = 0.0;
};
[[nodiscard]] RimPoint rim_point(const Pinhole& camera, double along_mm, double radius_mm, double angle_rad);

// Where the flange's face stands along the axis when its rim ends at u in the row v (above the axis, or below it): the rim passes
// that row twice, on the camera's side and beyond the axis. Side 1: the one that is seen farther along ends it, as of a left
// flange toward the wind; -1: the other.
[[nodiscard]] double along_of_rim(const Pinhole& camera, double radius_mm, double u, double v, int side);

}  // namespace laywright
