// A finished picture on its way from the painter to the window.
#pragma once

#include <cstdint>
#include <vector>

#include "render/handles.h"

namespace laywright {

// How the window gets it: as a texture, where the painter's OpenGL shares its objects with the window's; else as
// bytes (pixel_work.h).
struct FinishedPicture {
  int width = 0, height = 0;
  Texture texture;
  std::vector<std::uint8_t> bytes;
  GLsync read = nullptr;  // what the window has last read of the texture; the painter waits for it
};

}  // namespace laywright
