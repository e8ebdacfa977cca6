// Published colours that colour-blind people can tell apart.
#pragma once

#include <array>
#include <cstdint>

#include "measure/measurements.h"
#include "scene/coordinates.h"
#include "scene/view.h"

namespace laywright {

// Okabe and Ito, "Color Universal Design", 2002, revised 2008: for what is told apart and has no order.
inline constexpr std::array<Rgba, 6> hue_palette{{
    {0x00, 0x72, 0xB2, 255},  // blue
    {0xE6, 0x9F, 0x00, 255},  // orange
    {0x00, 0x9E, 0x73, 255},  // bluish green
    {0xF0, 0xE4, 0x42, 255},  // yellow
    {0xD5, 0x5E, 0x00, 255},  // vermilion
    {0x56, 0xB4, 0xE9, 255},  // sky blue
}};

// Of 0xrrggbb.
[[nodiscard]] constexpr Rgba rgb(std::uint32_t code) {
  return {static_cast<std::uint8_t>(code >> 16U & 0xFFU), static_cast<std::uint8_t>(code >> 8U & 0xFFU),
          static_cast<std::uint8_t>(code & 0xFFU), 255};
}

// Of a layer of so many, 1 on the barrel: viridis without its lime and yellow, the deeper, the darker. Every other one
// is a little darker still, so that neighbours are told apart in a wind of many.
[[nodiscard]] Rgba layer_rgba(std::size_t layer, std::size_t layers);

// Viridis (S. van der Walt, N. Smith, 2015; CC0), share 0 to 1, clamped.
[[nodiscard]] Rgba viridis(double share);

// Purple to orange over near-white, diverging (PuOr of ColorBrewer 2.0, 11 classes, by C. Brewer, Apache 2.0), share 0
// to 1 with the middle at 1/2, clamped.
[[nodiscard]] Rgba purple_orange(double share);

// Colour of the marks of a kind of finding.
[[nodiscard]] Rgba finding_rgba(FindingKind kind);

// Ground of the picture, ink of texts and lines, spool material.
struct ThemeColours {
  Rgba ground_top, ground_foot, ink, faint_ink, spool, veil;
};
[[nodiscard]] ThemeColours theme_colours(Theme theme);

// Colour of what lies outside the chosen layers.
[[nodiscard]] Rgba faded(Rgba colour, Theme theme);

// From a to b.
[[nodiscard]] Rgba mixed(Rgba a, Rgba b, double share);

}  // namespace laywright
