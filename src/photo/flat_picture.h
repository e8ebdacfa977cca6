// A photograph made ready for looking for edges: its light evened out, the spool told from the ground. Inside the folder
// only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "photo/read_photo.h"

namespace laywright {

struct FlatPicture {
  int width = 0, height = 0;
  std::vector<float> grey;           // 1 is the ground wherever it is seen, 0 is black
  std::vector<std::uint8_t> inside;  // not 0: a pixel of the largest dark thing, the spool
  double noise = 0.0;                // of the ground's grey, one sigma
  double contrast = 0.0;             // ground less the spool's mean

  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
  }
  [[nodiscard]] bool is_spool(int x, int y) const { return inside[index(x, y)] != 0; }
  [[nodiscard]] double grey_at(int x, int y) const { return static_cast<double>(grey[index(x, y)]); }
};

// Blurred by a pixel, turned by so much about its middle (positive: against the clock as it is seen), divided by a
// parabola of brightness fitted to the ground, and parted by Otsu's threshold (Otsu 1979: the variance between both classes
// is greatest). Otherwise `why` says what is wrong: the ground is not lighter than the spool, or hardly.
[[nodiscard]] FlatPicture flattened(const GreyPhoto& photo, double turn_rad, std::string& why);

}  // namespace laywright
