// Colours that tell layers apart.
#pragma once

#include <array>

#include "paper/drawing.h"

namespace laywright {

// Six hues of the colour-blind safe set of Okabe and Ito ("Color Universal Design", 2002, revised 2008), ordered
// so that dark and light alternate: neighbouring layers differ in black and white, too, and dark is one direction
// of the traverse, light the other.
inline constexpr std::array<Color, 6> layer_colors{{
    {0.0, 0x72 / 255.0, 0xB2 / 255.0},           // blue
    {0xE6 / 255.0, 0x9F / 255.0, 0.0},           // orange
    {0.0, 0x9E / 255.0, 0x73 / 255.0},           // bluish green
    {0xF0 / 255.0, 0xE4 / 255.0, 0x42 / 255.0},  // yellow
    {0xD5 / 255.0, 0x5E / 255.0, 0.0},           // vermilion
    {0x56 / 255.0, 0xB4 / 255.0, 0xE9 / 255.0},  // sky blue
}};

// Colour of a layer; layer 1 is the one on the barrel.
[[nodiscard]] inline const Color& layer_color(std::size_t layer) {
  return layer_colors[(layer - 1) % layer_colors.size()];
}

}  // namespace laywright
