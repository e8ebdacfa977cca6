// What a frame is drawn into: colours, ids and depth, finer than the picture by a whole factor in both directions,
// from which the picture is averaged.
#pragma once

#include <cstdint>

#include "render/handles.h"
#include "render/image.h"
#include "render/program.h"

namespace laywright {

class FrameTarget {
 public:
  // Of the picture, in pixels; `factor` 1 to 4. Throws std::runtime_error when the driver refuses the size.
  FrameTarget(int width, int height, int factor);

  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] int height() const { return height_; }
  [[nodiscard]] int factor() const { return factor_; }
  [[nodiscard]] int fine_width() const { return width_ * factor_; }
  [[nodiscard]] int fine_height() const { return height_ * factor_; }

  // From here on, draws go into the fine colours and ids.
  void begin() const;

  // Averages the fine colours into the picture, and makes the picture what is drawn into.
  void resolve(const Program& average, const VertexArray& nothing) const;

  // The picture as it stands, colours premultiplied by their opacity.
  [[nodiscard]] Image read() const;

  // The id under the middle of a pixel, counted from the upper left.
  [[nodiscard]] std::uint32_t id_at(int x, int y) const;

 private:
  int width_, height_, factor_;
  Texture fine_colors_, ids_, picture_;
  Renderbuffer depth_;
  Framebuffer fine_, plain_;
};

}  // namespace laywright
