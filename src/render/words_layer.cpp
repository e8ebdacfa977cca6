#include "render/words_layer.h"

#include <algorithm>
#include <vector>

#include "render/inked_tiles.h"

namespace laywright {

void WordsLayer::load(const Canvas& canvas) {
  const std::vector<Tile> tiles = inked_tiles(canvas);
  if (!sheet_ || width_ != canvas.width() || height_ != canvas.height()) {
    width_ = canvas.width();
    height_ = canvas.height();
    sheet_ = make_texture(width_, height_, four_bytes, nullptr);
  }
  glBindTexture(GL_TEXTURE_2D, sheet_.name());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glPixelStorei(GL_UNPACK_ROW_LENGTH, width_);
  std::vector<float> corners;
  for (const Tile& tile : tiles) {
    const unsigned char* from =
        canvas.data() + 4 * (static_cast<std::ptrdiff_t>(tile.y) * width_ + static_cast<std::ptrdiff_t>(tile.x));
    glTexSubImage2D(GL_TEXTURE_2D, 0, tile.x, tile.y, tile.width, tile.height, GL_RGBA, GL_UNSIGNED_BYTE, from);
    const auto to_clip = [](int at, int of) {
      return 2.0F * static_cast<float>(at) / static_cast<float>(of) - 1.0F;
    };
    const float left = to_clip(tile.x, width_), right = to_clip(tile.x + tile.width, width_);
    const float top = -to_clip(tile.y, height_), foot = -to_clip(tile.y + tile.height, height_);
    corners.insert(corners.end(), {left, foot, right, foot, left, top, left, top, right, foot, right, top});
  }
  glPixelStorei(GL_UNPACK_ROW_LENGTH, 0);
  count_ = static_cast<GLsizei>(corners.size() / 2);
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, corners_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(corners.size() * sizeof(float)), corners.data(),
               GL_DYNAMIC_DRAW);
  glEnableVertexAttribArray(0);
  glVertexAttribPointer(0, 2, GL_FLOAT, GL_FALSE, 0, nullptr);
}

void WordsLayer::draw() const {
  if (count_ == 0) return;
  glDisable(GL_DEPTH_TEST);
  glEnable(GL_BLEND);
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  program_.use();
  program_.set("sheet", 0);
  bind_texture(0, sheet_);
  glBindVertexArray(array_.name());
  glDrawArrays(GL_TRIANGLES, 0, count_);
  glDisable(GL_BLEND);
}

}  // namespace laywright
