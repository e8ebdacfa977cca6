// An image that the graphics card holds for a panel.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/scene.h"

namespace laywright {

struct PanelImage {
  std::uint64_t version = 0;  // tells when it must be given to the card anew
  int width = 0, height = 0;
  std::vector<Rgba> pixels;
};

}  // namespace laywright
