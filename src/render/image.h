// A picture in memory.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace laywright {

// Rows from above to below, four bytes a pixel: red, green, blue (sRGB, multiplied by the opacity), opacity.
struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> bytes;
};

// The bytes of a PNG file; empty when there is too little memory.
[[nodiscard]] std::string to_png(const Image& image);

}  // namespace laywright
