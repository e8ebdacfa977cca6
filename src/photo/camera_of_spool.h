// Where the camera stood, by what it saw of a spool of known size. Inside the folder only.
#pragma once

#include <array>
#include <string>

#include "photo/edge_profile.h"
#include "photo/pinhole.h"
#include "photo/seen_spool.h"

namespace laywright {

// The plan's spool at its rims.
struct SpoolSize {
  double flange_radius_mm = 0.0;
  double width_mm = 0.0;     // between the rims' inner edges
  double set_back_mm = 0.0;  // how far each rim's edge stands outside the face at the barrel
};
[[nodiscard]] SpoolSize size_of(const Spool& spool);

struct SeenWidth {
  Pinhole camera;
  std::array<double, 2> face_mm{};  // rims' inner edges along the axis

  [[nodiscard]] double width_mm() const { return face_mm[1] - face_mm[0]; }
};

// As a camera at that distance from the axis saw it.
[[nodiscard]] SeenWidth seen_from(const FlatPicture& picture, const SeenSpool& seen, const SpoolSize& size,
                                  double distance_mm);

// CameraNearness: (R / D)^2, in which all that distance does is nearly linear.
struct CameraNearness {
  double best = 0.0, least = 0.0, most = 0.0;  // one sigma to either side, as far as it is possible
};

// By the inside width, from where both rims end toward the wind. Before that, all R / D are as likely, from those of a lens that
// sees 3 degrees to either side to those of one that sees 40, or to a distance of 3.5 R. Otherwise `why`: no distance among
// these explains the width within four sigmas.
[[nodiscard]] CameraNearness nearness_of(const FlatPicture& picture, const SeenSpool& seen, const SpoolSize& size,
                                         double spool_error, std::string& why);

}  // namespace laywright
