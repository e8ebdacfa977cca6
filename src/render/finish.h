// From frames as they are drawn to a finished picture: made larger or averaged, with words over it.
#pragma once

#include <memory>

#include "render/canvas.h"
#include "render/finished_picture.h"
#include "render/render_target.h"
#include "scene/palette.h"

namespace laywright {

class Finish {
 public:
  virtual ~Finish() = default;

  // True if frames must come without a ground: it is laid here.
  [[nodiscard]] virtual bool lays_ground() const = 0;

  // What stands over the pictures from now on; its size is theirs.
  virtual void take_words(const Canvas& canvas) = 0;

  // A frame: the lower left part of the target. Quick ones, of `drawn` pixels, are pictures by themselves; fine ones,
  // of the picture's size, add to a mean, which the first begins anew.
  virtual void take_quick(const RenderTarget& frame, glm::ivec2 drawn) = 0;
  virtual void take_fine(const RenderTarget& frame, int number) = 0;  // 1, 2, ...

  // Makes a picture of what was taken, and all drawing is done.
  virtual void hand_over(const ThemeColours& colours, FinishedPicture& picture) = 0;
};

// Through OpenGL, onto textures.
[[nodiscard]] std::unique_ptr<Finish> texture_finish();
// In memory, onto bytes.
[[nodiscard]] std::unique_ptr<Finish> memory_finish();

}  // namespace laywright
