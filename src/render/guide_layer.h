// Draws the guide's eye and the free fiber as solids.
#pragma once

#include "render/frame.h"
#include "render/solid_part.h"

namespace laywright {

class GuideLayer {
 public:
  void load(const Scene& scene);
  // Into colour and depth; nothing where the scene has no guide.
  void draw(const Frame& frame) const;

 private:
  Program program_{"solid"};
  SolidPart eye_, fiber_;
  glm::vec3 fiber_colour_{0.0F};
  bool any_ = false;
};

}  // namespace laywright
