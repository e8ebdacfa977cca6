// How far the lens bends what is straight, told by the flanges' outer edges. Inside the folder only.
//
// A pinhole sees a flange's outer edge as a part of an ellipse that the distance gives (pinhole.h). What it bends more than that is the
// lens: where a point seen at the distance r from the picture's middle belongs at r (1 + q r^2), an edge at u whose ends stand
// V above and below is bent inward there by u q V^2. So q follows, with one term of the common model of distortion (Brown 1966;
// from memory): positive for a barrel, negative for a pincushion.
#pragma once

#include <optional>

#include "photo/camera_of_spool.h"

namespace laywright {

struct LensBend {
  double bend_px = 0.0;   // of the ends of the flanges' outer edges toward the spool's middle, mean of both
  double sigma_px = 0.0;  // one sigma: both flanges differ, the distance is uncertain
  double strength = 0.0;  // q, 1 / px^2, of what two sigmas do not explain; 0 where they explain all
};

// None where too little of the outer edges is seen. `near_mm`, `far_mm`: one sigma of the distance to either side.
[[nodiscard]] std::optional<LensBend> lens_bend(const FlatPicture& picture, double edge_width,
                                                const SeenSpool& spool, const SpoolSize& size, double distance_mm,
                                                double near_mm, double far_mm);

// Share by which a diameter seen between v above and below at u, px from the picture's middle, is off for a lens of that strength
// when its scale is taken from the rims.
[[nodiscard]] double share_off(double strength, const FlatPicture& picture, const SeenSpool& spool, double u,
                               double v);

}  // namespace laywright
