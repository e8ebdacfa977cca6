// What the spool covers of the picture, so that words keep clear of it.
#pragma once

#include <vector>

#include "scene/scene.h"

namespace laywright {

class SpoolShade {
 public:
  SpoolShade(const Scene& scene, const View& view);

  // Around all of the spool that is before the eye, px.
  [[nodiscard]] glm::dvec2 low() const { return low_; }
  [[nodiscard]] glm::dvec2 high() const { return high_; }
  [[nodiscard]] bool covers(glm::dvec2 place) const;
  // Share of a box that lies over the spool, 0 to 1.
  [[nodiscard]] double under(glm::dvec2 corner, glm::dvec2 size) const;

 private:
  glm::dvec2 low_{1e300}, high_{-1e300};
  std::vector<glm::dvec2> hull_;  // convex, without corners where nothing is before the eye
};

}  // namespace laywright
