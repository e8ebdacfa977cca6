// A photograph of a wound spool as it would be, rendered here: no camera took it. A pinhole sees a solid of revolution; the
// outline in each column is the steepest of all rays that meet the solid, found by going through it step by step and not by the
// closed forms that are tested with it.
#pragma once

#include <cstdint>
#include <functional>

#include "photo/read_photo.h"

namespace laywright::testing {

struct RenderedSpool {
  double flange_diameter_mm = 236.0, inside_width_mm = 95.0, flange_thickness_mm = 4.0;
  double flange_taper_rad = 0.0, barrel_diameter_mm = 150.0;
  double right_flange_off_mm = 0.0;                // its diameter over the left one's
  double shaft_diameter_mm = 0.0;                  // beside the flanges, over the picture's borders; 0: none
  std::function<double(double x_mm)> diameter_mm;  // of the wind, x from the left face at the barrel
};

struct RenderedView {
  int width_px = 1400, height_px = 1300;
  double distance_mm = 1500.0, px_per_mm = 4.5;  // at the axis
  double tilt_deg = 0.0, yaw_deg = 0.0;
  double right_mm = 0.0, up_mm = 0.0;  // of the spool, off what the camera looks at
  double blur_px = 1.0;                // sigma
  double noise = 2.0;                  // of 255, sigma
  double ground = 225.0, spool = 60.0;
  // Of the lens: what belongs on the border, half the picture's width from its middle, is seen nearer by this share, and so on with
  // the cube: positive a barrel, negative a pincushion.
  double barrel = 0.0;
  double uneven = 0.0;  // brightness that is lost from one corner to the other, share
  std::uint64_t seed = 1;
};

[[nodiscard]] GreyPhoto rendered(const RenderedSpool& spool, const RenderedView& view);

}  // namespace laywright::testing
