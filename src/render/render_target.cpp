#include "render/render_target.h"

#include <stdexcept>

namespace laywright {

void expect_complete_framebuffer() {
  if (glCheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE)
    throw std::runtime_error("the graphics driver refuses a picture of this size");
}

void RenderTarget::fit(int new_width, int new_height, const TexelFormat& texels, bool deep) {
  if (width == new_width && height == new_height) return;
  width = new_width;
  height = new_height;
  colours = make_texture(width, height, texels, nullptr);
  framebuffer = Framebuffer::make();
  glBindFramebuffer(GL_FRAMEBUFFER, framebuffer.name());
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colours.name(), 0);
  if (deep) {
    depth = Renderbuffer::make();
    glBindRenderbuffer(GL_RENDERBUFFER, depth.name());
    glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, width, height);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth.name());
  }
  expect_complete_framebuffer();
}

}  // namespace laywright
