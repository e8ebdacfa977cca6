#include "render/finish.h"
#include "render/frame.h"
#include "render/pixel_work.h"

namespace laywright {
namespace {

void read(const RenderTarget& frame, glm::ivec2 size, Pixels& pixels) {
  pixels.resize(size.x, size.y);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, frame.framebuffer.name());
  glReadBuffer(GL_COLOR_ATTACHMENT0);
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, size.x, size.y, GL_RGBA, GL_UNSIGNED_BYTE, pixels.bytes.data());
}

class MemoryFinish : public Finish {
 public:
  [[nodiscard]] bool lays_ground() const override { return true; }

  void take_words(const Canvas& canvas) override {
    words_ = &canvas;
    tiles_ = inked_tiles(canvas);
  }

  void take_quick(const RenderTarget& frame, glm::ivec2 drawn) override {
    read(frame, drawn, raw_);
    quick_ = true;
  }

  void take_fine(const RenderTarget& frame, int number) override {
    read(frame, {words_->width(), words_->height()}, raw_);
    if (number == 1) mean_.clear();
    mean_.add(raw_);
    quick_ = false;
  }

  void hand_over(const ThemeColours& colours, FinishedPicture& picture) override {
    picture_.bytes = std::move(picture.bytes);
    picture_.resize(words_->width(), words_->height());
    if (!quick_) {
      mean_.write(picture_);
    } else if (raw_.width == picture_.width && raw_.height == picture_.height) {
      picture_.bytes = raw_.bytes;
    } else {
      enlarge(raw_, picture_);
    }
    lay_ground(picture_, rgb_of(colours.ground_foot), rgb_of(colours.ground_top));
    lay_words(picture_, *words_, tiles_);
    picture.width = picture_.width;
    picture.height = picture_.height;
    picture.bytes = std::move(picture_.bytes);
  }

 private:
  const Canvas* words_ = nullptr;
  std::vector<Tile> tiles_;
  Pixels raw_, picture_;
  PixelMean mean_;
  bool quick_ = true;
};

}  // namespace

std::unique_ptr<Finish> memory_finish() { return std::make_unique<MemoryFinish>(); }

}  // namespace laywright
