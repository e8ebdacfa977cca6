#include "render/frame_target.h"

#include <algorithm>
#include <stdexcept>

#include "render/texture.h"

namespace laywright {
namespace {

void expect_complete() {
  if (glCheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE)
    throw std::runtime_error("the graphics driver refuses a picture of this size");
}

}  // namespace

FrameTarget::FrameTarget(int width, int height, int factor)
    : width_(width),
      height_(height),
      factor_(factor),
      fine_colors_(make_texture(width * factor, height * factor, four_bytes, nullptr)),
      ids_(make_texture(width * factor, height * factor, one_id, nullptr)),
      picture_(make_texture(width, height, four_bytes, nullptr)),
      depth_(Renderbuffer::make()),
      fine_(Framebuffer::make()),
      plain_(Framebuffer::make()) {
  glBindRenderbuffer(GL_RENDERBUFFER, depth_.name());
  glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, fine_width(), fine_height());
  glBindFramebuffer(GL_FRAMEBUFFER, fine_.name());
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, fine_colors_.name(), 0);
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT1, GL_TEXTURE_2D, ids_.name(), 0);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth_.name());
  expect_complete();
  glBindFramebuffer(GL_FRAMEBUFFER, plain_.name());
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, picture_.name(), 0);
  expect_complete();
}

void FrameTarget::begin() const { glBindFramebuffer(GL_FRAMEBUFFER, fine_.name()); }

void FrameTarget::resolve(const Program& average, const VertexArray& nothing) const {
  glDisable(GL_DEPTH_TEST);
  glDisable(GL_BLEND);
  if (factor_ <= 2) {
    // A linear blit halves exactly: each sample lies at the corner of four pixels.
    glBindFramebuffer(GL_READ_FRAMEBUFFER, fine_.name());
    glReadBuffer(GL_COLOR_ATTACHMENT0);
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, plain_.name());
    glBlitFramebuffer(0, 0, fine_width(), fine_height(), 0, 0, width_, height_, GL_COLOR_BUFFER_BIT,
                      factor_ == 1 ? GL_NEAREST : GL_LINEAR);
  }
  glBindFramebuffer(GL_FRAMEBUFFER, plain_.name());
  glViewport(0, 0, width_, height_);
  if (factor_ <= 2) return;
  average.use();
  average.set("fine", 0);
  average.set("factor", factor_);
  bind_texture(0, fine_colors_);
  glBindVertexArray(nothing.name());
  glDrawArrays(GL_TRIANGLES, 0, 3);
}

Image FrameTarget::read() const {
  const auto row = static_cast<std::size_t>(width_) * 4;
  const auto rows = static_cast<std::size_t>(height_);
  Image image{width_, height_, std::vector<std::uint8_t>(row * rows)};
  std::vector<std::uint8_t> upward(row * rows);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, plain_.name());
  glReadBuffer(GL_COLOR_ATTACHMENT0);
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width_, height_, GL_RGBA, GL_UNSIGNED_BYTE, upward.data());
  for (std::size_t y = 0; y < rows; ++y) std::copy_n(&upward[(rows - 1 - y) * row], row, &image.bytes[y * row]);
  return image;
}

std::uint32_t FrameTarget::id_at(int x, int y) const {
  std::uint32_t id = 0;
  glBindFramebuffer(GL_READ_FRAMEBUFFER, fine_.name());
  glReadBuffer(GL_COLOR_ATTACHMENT1);
  glReadPixels(x * factor_ + factor_ / 2, fine_height() - 1 - (y * factor_ + factor_ / 2), 1, 1, GL_RED_INTEGER,
               GL_UNSIGNED_INT, &id);
  return id;
}

}  // namespace laywright
