// A picture in memory.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace laywright {

// Rows from above to below, four bytes a pixel: red, green, blue (sRGB, multiplied by the opacity), opacity.
struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> bytes;
};

// The bytes of a PNG file; empty when there is too little memory, or when `goes_on`, asked all the while, says no.
[[nodiscard]] std::string to_png(const Image& image, const std::function<bool()>& goes_on = {});

}  // namespace laywright
