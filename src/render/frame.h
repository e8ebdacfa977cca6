// What all parts of a frame share: where the eye is, how fine the picture is, and the colours of its theme.
#pragma once

#include <glm/glm.hpp>

#include "render/program.h"
#include "scene/camera.h"
#include "scene/palette.h"
#include "scene/scene.h"
#include "scene/sight.h"

namespace laywright {

struct Frame {
  glm::mat4 to_eye{1.0F}, to_clip{1.0F}, from_eye{1.0F};
  bool parallel = false;
  int width = 0, height = 0;  // fine pixels
  float factor = 1.0F;        // fine pixels to a pixel of the picture
  // Of several frames that are averaged: how much finer than by its pixels each must look, and of the blend of two
  // levels of detail, fine pixels to a pixel and which part this frame is (shell.frag.glsl).
  float detail = 1.0F;
  glm::vec2 dither{1.0F, 0.5F};
  bool coarse = false;  // shapes may be, too: it is to be drawn quickly
  ThemeColours colours;
  glm::vec2 x_range{0.0F};    // of what is shown, mm
  std::vector<Sector> shown;  // around the spool: what the cuts leave, `from` rising, each below `to`
  float fiber_radius_mm = 0.0F;
  Sheen sheen;  // of the fiber
  GlassFlanges glass;
  double mm_per_px = 1.0;  // of the picture, at the target

  // Sets the uniforms that all programs of a scene have, and uses the program.
  void use(const Program& program) const;

  // Light on a plane, 0 to 1; `normal` in space.
  [[nodiscard]] float brightness(const Vec3& normal) const;
};

// A frame of so many pixels, whatever those of the view.
[[nodiscard]] Frame make_frame(const Scene& scene, const View& view, const Sphere& sphere, int width, int height);

// The same, moved by a part of a pixel to the right and upward.
[[nodiscard]] Frame moved(Frame frame, glm::vec2 pixels);

// What the removed sectors leave of a full turn, in rising order from the end of the first; the full turn when none
// is removed.
[[nodiscard]] std::vector<Sector> left_by(const std::vector<Sector>& removed);

[[nodiscard]] inline glm::vec3 rgb_of(const Rgba& color) { return glm::vec3(color.r, color.g, color.b) / 255.0F; }

}  // namespace laywright
