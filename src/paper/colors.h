// Colours on paper: those of layers, and hues for what has no order.
#pragma once

#include <cstddef>
#include <cstdint>

#include "measure/layer_shade.h"
#include "paper/drawing.h"

namespace laywright {

// Of 0xrrggbb.
[[nodiscard]] constexpr Color color_of(std::uint32_t code) {
  return {(code >> 16U & 0xFFU) / 255.0, (code >> 8U & 0xFFU) / 255.0, (code & 0xFFU) / 255.0};
}

// Of a layer of so many; layer 1 is the one on the barrel.
[[nodiscard]] inline Color layer_color(std::size_t layer, std::size_t layers) {
  return color_of(layer_code(layer, layers));
}

// Of the colour-blind safe set of Okabe and Ito ("Color Universal Design", 2002, revised 2008).
inline constexpr Color blue_hue = color_of(0x0072B2), sky_hue = color_of(0x56B4E9);

}  // namespace laywright
