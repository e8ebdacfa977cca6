#include "render/texture.h"

namespace laywright {

Texture make_texture(int width, int height, const TexelFormat& texels, const void* data) {
  Texture texture = Texture::make();
  glBindTexture(GL_TEXTURE_2D, texture.name());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glTexImage2D(GL_TEXTURE_2D, 0, texels.internal, width, height, 0, texels.format, texels.type, data);
  return texture;
}

void bind_texture(int unit, const Texture& texture) {
  glActiveTexture(GL_TEXTURE0 + static_cast<GLenum>(unit));
  glBindTexture(GL_TEXTURE_2D, texture.name());
}

}  // namespace laywright
