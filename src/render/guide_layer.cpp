#include "render/guide_layer.h"

namespace laywright {

void GuideLayer::load(const Scene& scene) {
  any_ = scene.guide.has_value();
  if (!any_) return;
  eye_.load(scene.guide->eye);
  fiber_.load(scene.guide->fiber);
  fiber_colour_ = rgb_of(scene.guide->fiber_colour);
}

void GuideLayer::draw(const Frame& frame) const {
  if (!any_) return;
  frame.use(program_);
  program_.set("opacity", 1.0);
  program_.set("metal", 0.0);
  program_.set("wind", glm::vec4(0.0F, 0.0F, 0.0F, 1.0F));  // it throws no shade here
  glDepthMask(GL_TRUE);
  glEnable(GL_CULL_FACE);
  glCullFace(GL_BACK);
  program_.set("albedo", glm::mix(rgb_of(frame.colours.spool), rgb_of(frame.colours.ink), 0.35F));
  eye_.draw();
  program_.set("albedo", fiber_colour_);
  fiber_.draw();
  glDisable(GL_CULL_FACE);
  glDepthMask(GL_FALSE);
}

}  // namespace laywright
