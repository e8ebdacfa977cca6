#include "render/solid_layer.h"

namespace laywright {

void SolidLayer::load(const SpoolSolid& spool, const Sheen& sheen) {
  metal_ = sheen.metal;
  parts_[0].load(spool.barrel);
  parts_[1].load(spool.left_flange);
  parts_[2].load(spool.right_flange);
}

void SolidLayer::begin(const Frame& frame, const Wind& wind, const glm::vec3& albedo, double opacity) const {
  frame.use(program_);
  program_.set("albedo", albedo);
  program_.set("opacity", opacity);
  program_.set("metal", metal_);
  const double reach_mm = 0.06 * wind.radius_mm;
  program_.set("wind", glm::vec4(wind.x_from_mm, wind.x_to_mm, wind.radius_mm, reach_mm));
}

void SolidLayer::draw_barrel(const Frame& frame, const Wind& wind) const {
  begin(frame, wind, rgb_of(frame.colours.spool) * 0.9F, 1.0);
  // The bare surface is part of the shell, which must win where both lie.
  glEnable(GL_POLYGON_OFFSET_FILL);
  glPolygonOffset(1.0F, 2.0F);
  parts_[0].draw();
  glDisable(GL_POLYGON_OFFSET_FILL);
}

void SolidLayer::draw_flanges(const Frame& frame, const Wind& wind) const {
  begin(frame, wind, rgb_of(frame.colours.spool), 1.0);
  if (!frame.glass.left) parts_[1].draw();
  if (!frame.glass.right) parts_[2].draw();
}

void SolidLayer::draw_glass(const Frame& frame, const Wind& wind, double opacity) const {
  if (!frame.glass.left && !frame.glass.right) return;
  begin(frame, wind, rgb_of(frame.colours.spool), opacity);
  // Far sides first, so that what is blended lies in the right order. Of one flange the near side alone is enough, at half
  // the cost.
  const bool both = frame.glass.left && frame.glass.right;
  glEnable(GL_CULL_FACE);
  for (const GLenum hidden : std::array<GLenum, 2>{GL_FRONT, GL_BACK}) {
    if (hidden == GL_FRONT && !both) continue;
    glCullFace(hidden);
    if (frame.glass.left) parts_[1].draw();
    if (frame.glass.right) parts_[2].draw();
  }
  glCullFace(GL_BACK);
}

}  // namespace laywright
