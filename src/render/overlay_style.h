// Sizes and inks that all parts of the overlay share.
#pragma once

#include "render/canvas.h"
#include "scene/palette.h"

namespace laywright {

struct OverlayStyle {
  double unit = 1.0;  // px; letters are 13 of them high
  Ink ink, faint, ground;
  glm::dvec2 caption{0.0, 0.0};  // lower right corner of what the caption takes, from the upper left corner; px

  [[nodiscard]] double letters() const { return 13.0 * unit; }
  [[nodiscard]] double margin() const { return 22.0 * unit; }
  [[nodiscard]] double scale_height() const { return 34.0 * unit; }  // of the scale bar and its words
};

[[nodiscard]] inline Ink ink_of(const Rgba& color, double opacity = 1.0) {
  return {glm::vec3(color.r, color.g, color.b) / 255.0F, opacity * color.a / 255.0};
}

}  // namespace laywright
