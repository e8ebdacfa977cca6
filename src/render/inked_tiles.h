// Where on a canvas something is drawn.
#pragma once

#include <vector>

#include "render/canvas.h"

namespace laywright {

// Pixels, y downward.
struct Tile {
  int x = 0, y = 0, width = 0, height = 0;
};

// Tiles that do not overlap and hold all that is not wholly transparent, in rows of 32 pixels.
[[nodiscard]] std::vector<Tile> inked_tiles(const Canvas& canvas);

}  // namespace laywright
