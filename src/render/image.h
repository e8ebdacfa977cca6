// A picture in memory.
#pragma once

#include <cstdint>
#include <vector>

namespace laywright {

// Rows from above to below, four bytes a pixel: red, green, blue (sRGB, multiplied by the opacity), opacity.
struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> bytes;
};

}  // namespace laywright
