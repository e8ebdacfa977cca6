#include "photo/camera_of_spool.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "photo/median.h"

namespace laywright {
namespace {

constexpr double narrowest_view_deg = 3.0, widest_view_deg = 40.0;
// Nearer, the width comes down again as the rims are seen ever more from inside: two distances would explain it.
constexpr double least_distance_radii = 3.5;

// (R / D)^2 of a lens that sees so far to each side of the picture's longer half.
double nearness_of_lens(const FlatPicture& picture, const SeenSpool& seen, double half_view_rad) {
  const double focal = 0.5 * std::max(picture.width, picture.height) / std::tan(half_view_rad);
  const double half = 0.25 * (seen.flanges[0].height() + seen.flanges[1].height());
  return half * half / (half * half + focal * focal);
}

// The fewer pixels, the less sharply the faces stand: a fifth of one at each.
double width_error_mm(const SeenSpool& seen, const SpoolSize& size, double spool_error) {
  const double px_per_mm = 0.25 * (seen.flanges[0].height() + seen.flanges[1].height()) / size.flange_radius_mm;
  // Diameter and width of the spool are each off.
  return std::hypot(std::numbers::sqrt2 * spool_error * size.width_mm, std::numbers::sqrt2 * 0.2 / px_per_mm);
}

}  // namespace

SpoolSize size_of(const Spool& spool) {
  SpoolSize size;
  size.flange_radius_mm = 0.5 * spool.flange_diameter_mm;
  size.set_back_mm = std::tan(spool.flange_taper_rad) * 0.5 * (spool.flange_diameter_mm - spool.barrel_diameter_mm);
  size.width_mm = spool.inside_width_mm + 2.0 * size.set_back_mm;
  return size;
}

SeenWidth seen_from(const FlatPicture& picture, const SeenSpool& seen, const SpoolSize& size, double distance_mm) {
  const double middle_x = 0.5 * (picture.width - 1), middle_y = 0.5 * (picture.height - 1);
  const double radius = size.flange_radius_mm;
  const auto depth = [&](double focal, const SeenFlange& flange) {
    return depth_of_known(focal, radius, middle_y - flange.top, middle_y - flange.bottom);
  };
  SeenWidth found;
  Pinhole& camera = found.camera;
  camera.focal_px = 0.25 * (seen.flanges[0].height() + seen.flanges[1].height()) * distance_mm / radius;
  double left = 0.0, right = 0.0;
  for (int pass = 0; pass < 30; ++pass) {
    left = depth(camera.focal_px, seen.flanges[0]);
    right = depth(camera.focal_px, seen.flanges[1]);
    camera.focal_px *= 2.0 * distance_mm / (left + right);
  }
  camera.middle_z_mm = distance_mm;
  for (int pass = 0; pass < 6; ++pass) {
    for (std::size_t side = 0; side < 2; ++side) {
      const SeenFlange& flange = seen.flanges[side];
      const double axis = middle_y - 0.5 * (flange.top + flange.bottom);
      std::vector<double> along;
      for (const RowEnd& end : flange.face) {
        along.push_back(along_of_rim(camera, radius, end.x - middle_x, middle_y - end.y - axis, side == 0 ? 1 : -1));
      }
      found.face_mm[side] = median(std::move(along));
    }
    const double middle = 0.5 * (found.face_mm[0] + found.face_mm[1]);
    camera.middle_x_mm += middle * std::cos(camera.yaw_rad);
    for (double& face : found.face_mm) face -= middle;
    // The heights were seen at the rims, not at the faces.
    const double apart = along_of_edge(camera, seen.flanges[1].rim_x - middle_x, radius) -
                         along_of_edge(camera, seen.flanges[0].rim_x - middle_x, radius);
    camera.yaw_rad = std::asin(std::clamp((right - left) / std::max(1e-9, apart), -0.9, 0.9));
  }
  return found;
}

CameraNearness nearness_of(const FlatPicture& picture, const SeenSpool& seen, const SpoolSize& size,
                           double spool_error, std::string& why) {
  const double far = std::sqrt(nearness_of_lens(picture, seen, narrowest_view_deg * rad_per_deg));
  const double near = std::min(std::sqrt(nearness_of_lens(picture, seen, widest_view_deg * rad_per_deg)),
                               1.0 / least_distance_radii);
  const double sigma = width_error_mm(seen, size, spool_error);
  double weight = 0.0, sum = 0.0, squares = 0.0, nearest = 1e9, width_there = 0.0;
  constexpr int steps = 400;
  for (int i = 0; i <= steps; ++i) {
    const double ratio = far + (near - far) * i / steps;  // R / D
    const double nearness = ratio * ratio;
    const double width = seen_from(picture, seen, size, size.flange_radius_mm / ratio).width_mm();
    const double off = (width - size.width_mm) / sigma;
    if (std::abs(off) < nearest) nearest = std::abs(off), width_there = width;
    const double likely = std::exp(-0.5 * off * off);
    weight += likely, sum += likely * nearness, squares += likely * nearness * nearness;
  }
  if (nearest > 4.0) {
    why = fmt::format(
        "the inside width that is seen contradicts the plan: by the flanges' diameter it is {} mm, the plan has {} "
        "mm, "
        "and no distance of the camera explains that. Is it this plan's spool, is the picture cropped, are the "
        "flanges seen "
        "edge on?",
        figure(width_there - 2.0 * size.set_back_mm, 2), figure(size.width_mm - 2.0 * size.set_back_mm, 2));
    return {};
  }
  const double mean = sum / weight;
  const double spread = std::sqrt(std::max(squares / weight - mean * mean, 0.0));
  return {mean, std::clamp(mean - spread, far * far, mean), std::clamp(mean + spread, mean, near * near)};
}

}  // namespace laywright
