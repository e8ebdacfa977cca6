// Images of panels as textures of the graphics card.
#pragma once

#include <array>

#include "render/handles.h"
#include "ui/panel_state.h"

namespace laywright {

class PanelImages {
 public:
  // Uploads it when its version is new. The context must be current.
  [[nodiscard]] ImTextureID show(ImageSlot slot, const PanelImage& image);

 private:
  struct Slot {
    Texture texture;
    std::uint64_t version = 0;
  };
  std::array<Slot, 4> slots_;
};

}  // namespace laywright
