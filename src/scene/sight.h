// What stands between the eye and a place.
#pragma once

#include "scene/scene_source.h"

namespace laywright {

struct InTheWay {
  bool fiber = false;   // that the view shows; faded layers let through
  bool flange = false;  // one that is not see-through
  bool barrel = false;

  [[nodiscard]] bool nothing() const { return !fiber && !flange && !barrel; }
};

// Along a ray from the eye (in a parallel picture: from the eye's plane) to a thousandth of a fiber before the place.
// All with what cuts leave of them.
[[nodiscard]] InTheWay in_the_way(const SceneSource& source, const View& view, const Vec3& place);

// Which flanges are drawn as of glass: both where the view says so, else the one that the eye looks at from outside,
// since it stands before the wind.
struct GlassFlanges {
  bool left = false, right = false;
};
[[nodiscard]] GlassFlanges glass_flanges(const Camera& camera, double inside_width_mm, bool both);

}  // namespace laywright
