// A cut's face in coarser and coarser levels, for pictures in which the colours of its layers run together.
#pragma once

#include <vector>

#include "scene/face.h"

namespace laywright {

struct FaceLevel {
  int width = 0, height = 0;
  std::vector<Rgba> colour;  // multiplied by alpha
};

// Level 0 is of the image's size, each next of half of it (rounded down, at least 1), to one pixel. `filled` is the image
// with its voids filled. Colours are means. Where a fiber is finer than two pixels these are mud, and so layers are told
// apart otherwise: they alternate between light and dark by groups of 5, 10, 20, 50, ..., the least that makes a group
// four pixels high. Only where colours tell layers.
[[nodiscard]] std::vector<FaceLevel> face_levels(const std::vector<Rgba>& filled, const FaceImage& image);

// Layers to a group where a fiber is so many pixels thick.
[[nodiscard]] int layers_in_group(double fiber_px);

}  // namespace laywright
