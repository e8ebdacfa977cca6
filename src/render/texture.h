// Two-dimensional textures that shaders read texel by texel (texelFetch), and textures that are drawn into.
#pragma once

#include "render/handles.h"

namespace laywright {

// How texels are kept: OpenGL's internal format, and the format and type of the data handed over.
struct TexelFormat {
  GLint internal;
  GLenum format;
  GLenum type;
};
inline constexpr TexelFormat one_float{GL_R32F, GL_RED, GL_FLOAT};
inline constexpr TexelFormat two_floats{GL_RG32F, GL_RG, GL_FLOAT};
inline constexpr TexelFormat one_id{GL_R32UI, GL_RED_INTEGER, GL_UNSIGNED_INT};
inline constexpr TexelFormat four_bytes{GL_RGBA8, GL_RGBA, GL_UNSIGNED_BYTE};

// A texture of one level, unfiltered; null data leaves it undefined.
[[nodiscard]] Texture make_texture(int width, int height, const TexelFormat& texels, const void* data);

// Binds it to a numbered unit for the shaders.
void bind_texture(int unit, const Texture& texture);

}  // namespace laywright
