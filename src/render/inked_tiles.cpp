#include "render/inked_tiles.h"

#include <algorithm>
#include <cstdint>
#include <cstring>

namespace laywright {
namespace {

constexpr int side = 32;

bool any_ink(const unsigned char* row, int pixels) {
  std::uint32_t any = 0;
  for (int i = 0; i < pixels; ++i) {
    std::uint32_t pixel = 0;
    std::memcpy(&pixel, row + 4 * i, 4);
    any |= pixel;
  }
  return any != 0;
}

bool any_ink(const Canvas& canvas, const Tile& tile) {
  const unsigned char* const first = canvas.data() + 4 * tile.x;
  for (int y = tile.y; y < tile.y + tile.height; ++y)
    if (any_ink(first + 4 * static_cast<std::ptrdiff_t>(y) * canvas.width(), tile.width)) return true;
  return false;
}

}  // namespace

std::vector<Tile> inked_tiles(const Canvas& canvas) {
  std::vector<Tile> tiles;
  for (int y = 0; y < canvas.height(); y += side) {
    bool goes_on = false;
    for (int x = 0; x < canvas.width(); x += side) {
      const Tile tile{x, y, std::min(side, canvas.width() - x), std::min(side, canvas.height() - y)};
      const bool inked = any_ink(canvas, tile);
      if (inked && goes_on) {
        tiles.back().width += tile.width;
      } else if (inked) {
        tiles.push_back(tile);
      }
      goes_on = inked;
    }
  }
  return tiles;
}

}  // namespace laywright
