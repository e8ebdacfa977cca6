#include <utility>

#include "render/finish.h"
#include "render/words_layer.h"

namespace laywright {
namespace {

constexpr TexelFormat four_halves{GL_RGBA16F, GL_RGBA, GL_HALF_FLOAT};

class TextureFinish : public Finish {
 public:
  [[nodiscard]] bool lays_ground() const override { return false; }

  void take_words(const Canvas& canvas) override {
    words_.load(canvas);
    size_ = {canvas.width(), canvas.height()};
  }

  void take_quick(const RenderTarget& frame, glm::ivec2 drawn) override {
    from_ = &frame;
    drawn_ = drawn;
  }

  void take_fine(const RenderTarget& frame, int number) override {
    mean_.fit(size_.x, size_.y, four_halves, false);
    glBindFramebuffer(GL_FRAMEBUFFER, mean_.framebuffer.name());
    glViewport(0, 0, size_.x, size_.y);
    glDisable(GL_DEPTH_TEST);
    if (number > 1) {
      glEnable(GL_BLEND);
      glBlendColor(0.0F, 0.0F, 0.0F, 1.0F / static_cast<float>(number));
      glBlendFunc(GL_CONSTANT_ALPHA, GL_ONE_MINUS_CONSTANT_ALPHA);
    }
    copy_.use();
    copy_.set("fine", 0);
    copy_.set("factor", 1);
    bind_texture(0, frame.colours);
    glBindVertexArray(nothing_.name());
    glDrawArrays(GL_TRIANGLES, 0, 3);
    glDisable(GL_BLEND);
    from_ = &mean_;
    drawn_ = size_;
  }

  void hand_over(const ThemeColours&, FinishedPicture& picture) override {
    prepare(picture);
    glBindFramebuffer(GL_READ_FRAMEBUFFER, from_->framebuffer.name());
    glReadBuffer(GL_COLOR_ATTACHMENT0);
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, onto_.name());
    // Twice as fine is halved exactly: each sample lies at the corner of four pixels.
    glBlitFramebuffer(0, 0, drawn_.x, drawn_.y, 0, 0, size_.x, size_.y, GL_COLOR_BUFFER_BIT,
                      drawn_ == size_ ? GL_NEAREST : GL_LINEAR);
    glBindFramebuffer(GL_FRAMEBUFFER, onto_.name());
    glViewport(0, 0, size_.x, size_.y);
    words_.draw();
    glFinish();  // another context reads it from here on
  }

 private:
  void prepare(FinishedPicture& picture) {
    if (picture.read != nullptr) {
      glWaitSync(picture.read, 0, GL_TIMEOUT_IGNORED);
      glDeleteSync(std::exchange(picture.read, nullptr));
    }
    if (!picture.texture || picture.width != size_.x || picture.height != size_.y) {
      picture.width = size_.x;
      picture.height = size_.y;
      picture.texture = make_texture(picture.width, picture.height, four_bytes, nullptr);
    }
    glBindFramebuffer(GL_FRAMEBUFFER, onto_.name());
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, picture.texture.name(), 0);
    expect_complete_framebuffer();
  }

  WordsLayer words_;
  Program copy_{"cover", "average"};
  VertexArray nothing_ = VertexArray::make();
  Framebuffer onto_ = Framebuffer::make();
  RenderTarget mean_;
  const RenderTarget* from_ = nullptr;
  glm::ivec2 drawn_{0}, size_{0};
};

}  // namespace

std::unique_ptr<Finish> texture_finish() { return std::make_unique<TextureFinish>(); }

}  // namespace laywright
