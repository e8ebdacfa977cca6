// Which part of a cylinder or a cut's face a camera sees: rays through a grid of places of the picture.
#pragma once

#include "scene/face.h"
#include "scene/strands.h"

namespace laywright {

// Of the cylinder of that radius about the axis. When the picture shows its edge, the half that faces the eye.
[[nodiscard]] SurfaceWindow seen_of_cylinder(const View& view, double radius_mm, double x_from_mm, double x_to_mm);

// Of the half plane at that angle within the window; of no size when nothing of it is seen.
[[nodiscard]] FaceWindow seen_of_face(const View& view, double angle, const FaceWindow& window);

// The distance from the eye (or from the plane of the eye) to the nearest place of the cylinder that the picture
// shows; to the target when it shows none.
[[nodiscard]] double nearest_distance(const View& view, double radius_mm, double x_from_mm, double x_to_mm);

}  // namespace laywright
