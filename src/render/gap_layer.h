// Draws gaps at their exact places: the strips of surface between two turns that lie too far apart (lit.h).
#pragma once

#include "render/frame.h"
#include "render/geometry.h"

namespace laywright {

class GapLayer {
 public:
  void load(const Scene& scene);
  // With blending; depth is asked and left.
  void draw(const Frame& frame) const;

 private:
  Program program_{"gap"};
  QuadInstances strips_{0.0F};
};

}  // namespace laywright
