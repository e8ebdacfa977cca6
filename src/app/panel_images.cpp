#include "app/panel_images.h"

namespace laywright {

ImTextureID PanelImages::show(ImageSlot slot, const PanelImage& image) {
  Slot& kept = slots_[static_cast<std::size_t>(slot)];
  if (!kept.texture || kept.version != image.version) {
    if (!kept.texture) kept.texture = Texture::make();
    kept.version = image.version;
    glBindTexture(GL_TEXTURE_2D, kept.texture.name());
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glPixelStorei(GL_UNPACK_ROW_LENGTH, 0);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, image.width, image.height, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 image.pixels.data());
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  }
  return reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(kept.texture.name()));
}

}  // namespace laywright
