// The outline of a wound spool in a photograph: its outer diameter along the axis.
//
// The photograph shows the spool from the side, the axis about level, against a lighter ground, with ground all round both
// flanges, and is not cropped: the camera looks at its middle. Scale comes from the plan's flange diameter, at each flange,
// so that an axis that runs away from the camera is told and taken out. What is seen is the silhouette, formed by a pinhole
// (pinhole.h): the distance of the camera acts on it, and is taken from the person, or from the plan's inside width. Distortion by
// the lens is not corrected; how far the flanges' outer edges bend tells how much there is of it (lens_bend.h), what that does to
// diameters is in their uncertainty, and too much is refused.
//
// Beside a flange, its rim hides the wind from a camera that is not infinitely far away; there, there is no profile.
#pragma once

#include <optional>
#include <vector>

#include "base/result.h"
#include "photo/read_photo.h"
#include "plan/lay_plan.h"

namespace laywright {

struct PhotoSettings {
  std::optional<double>
      distance_mm;  // from the camera to the spool's axis, over the flange's radius; none: not known
  // How far flange diameter and inside width of the real spool may be off the plan's, one sigma, of each. 0.001 is common
  // for moulded spools; no source.
  double spool_error = 0.001;
  // Whether the flanges are flat outside, so that what bends their outer edges is the lens.
  bool flat_flanges = true;
};

// Where a photograph is not taken.
inline constexpr double most_tilt_deg = 8.0, most_yaw_deg = 8.0, most_flange_difference = 0.04;
inline constexpr double most_edge_width_px = 10.0, least_fiber_px = 0.5, most_width_off = 0.02;
// Share of a diameter that a lens may put it off.
inline constexpr double most_lens_off = 0.005;

struct PhotoFound {
  double px_per_mm = 0.0;      // at the axis, mean of both flanges
  double tilt_deg = 0.0;       // of the axis in the picture, positive where it rises to the right; taken out
  double yaw_deg = 0.0;        // of the axis, positive where it runs away to the right
  double flange_px[2] = {};    // height of the left and the right flange
  double edge_width_px = 0.0;  // in which ground turns into spool, one of the blur's three pixels among it
  bool distance_given = false;
  double distance_mm = 0.0;                                // from the camera to the axis
  double distance_least_mm = 0.0, distance_most_mm = 0.0;  // one sigma; where given, the same
  double inside_width_mm = 0.0;                            // as seen, at the barrel
  double hidden_left_mm = 0.0, hidden_right_mm = 0.0;      // width that the flanges' rims hide
  // By how much the ends of the flanges' outer edges bend toward the spool's middle, more than without distortion by the lens, with one
  // sigma; none where the flanges are not flat or too little of these edges is seen.
  std::optional<double> lens_bend_px;
  double lens_sigma_px = 0.0;
  double lens_off = 0.0;  // share by which that puts off a diameter in the middle, what the sigma explains left out
};

// Each diameter with one sigma: noise that differs from place to place, and what all places share: the spool's own size, the
// distance, a tenth of a pixel at each edge (light that spills over it; from memory), and what the lens bends.
struct EdgeProfile {
  PhotoFound found;
  std::vector<double> x_mm;  // from the left flange face at the barrel, rising; a place for each column of pixels
  std::vector<double> diameter_mm;
  std::vector<double> noise_mm, shared_mm;  // one sigma

  [[nodiscard]] double sigma_mm(std::size_t i) const;
};

// The spool and the fiber are the plan's. Errors, without a file: the ground is not lighter; no two flanges; the spool runs
// over the border; it is too blurred; a tilt over most_tilt_deg, flanges whose heights differ by over
// most_flange_difference, a yaw over most_yaw_deg; a fiber under least_fiber_px; a lens that puts diameters off by over most_lens_off; an inside width that the plan's contradicts:
// with a distance by more than most_width_off, without one by more than any distance explains.
[[nodiscard]] Result<EdgeProfile> edge_profile(const GreyPhoto& photo, const Plan& plan,
                                               const PhotoSettings& settings);

}  // namespace laywright
