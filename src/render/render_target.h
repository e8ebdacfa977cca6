// Colours that are drawn into, with or without depth.
#pragma once

#include "render/texture.h"

namespace laywright {

struct RenderTarget {
  int width = 0, height = 0;
  Texture colours;
  Renderbuffer depth;
  Framebuffer framebuffer;

  // Makes it anew when it is not of this size. Throws std::runtime_error when the driver refuses the size.
  void fit(int new_width, int new_height, const TexelFormat& texels, bool deep);
};

// Throws std::runtime_error unless the framebuffer that is bound can be drawn into.
void expect_complete_framebuffer();

}  // namespace laywright
