// Commands that move the camera of the picture in hand.
#pragma once

#include "scene/view.h"
#include "session/command.h"

namespace laywright::cmd {

Command set_camera(const Camera& camera);
Command orbit(double azimuth_deg, double elevation_deg);
Command zoom(double factor);                                  // above 1: nearer
Command look_from(double azimuth_deg, double elevation_deg);  // and fit
Command fit_view();
Command set_picture_size(int width_px, int height_px);

}  // namespace laywright::cmd
