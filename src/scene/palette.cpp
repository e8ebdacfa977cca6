#include "scene/palette.h"

#include <cmath>
#include <cstddef>

#include "base/colour_code.h"
#include "base/viridis.h"
#include "measure/layer_shade.h"

namespace laywright {

namespace {

constexpr std::array<std::uint32_t, 11> purple_orange_codes{
    {0x2D004B, 0x542788, 0x8073AC, 0xB2ABD2, 0xD8DAEB, 0xF7F7F7, 0xFEE0B6, 0xFDB863, 0xE08214, 0xB35806, 0x7F3B08}};

}  // namespace

Rgba mixed(Rgba a, Rgba b, double share) {
  const auto mix = [share](std::uint8_t from, std::uint8_t to) {
    return static_cast<std::uint8_t>(std::lround(from + share * (to - from)));
  };
  return {mix(a.r, b.r), mix(a.g, b.g), mix(a.b, b.b), mix(a.a, b.a)};
}

Rgba viridis(double share) { return rgb(viridis_code(share)); }

Rgba layer_rgba(std::size_t layer, std::size_t layers) { return rgb(layer_code(layer, layers)); }

Rgba purple_orange(double share) { return rgb(code_between(purple_orange_codes, share)); }

Rgba finding_rgba(FindingKind kind) {
  // What is lit or outlined on the surface has colours of the layers' set, signs have others: of P. Tol, "Colour
  // Schemes", 2021, vibrant and muted, and the purple of Okabe and Ito.
  switch (kind) {
    case FindingKind::gap: return rgb(0xF0E442);
    case FindingKind::flange_gap: return rgb(0xE69F00);
    case FindingKind::pile_up: return rgb(0xD55E00);
    case FindingKind::edge_valley: return rgb(0x0072B2);
    case FindingKind::ride_up: return rgb(0xEE3377);
    case FindingKind::dropped_turn: return rgb(0x332288);
    case FindingKind::bridge: return rgb(0x882255);
    case FindingKind::ribbon: return rgb(0x117733);
    case FindingKind::rim_overrun: return rgb(0xCC79A7);
  }
  return rgb(0x000000);
}

ThemeColours theme_colours(Theme theme) {
  if (theme == Theme::dark) {
    return {rgb(0x2A2E35), rgb(0x15171B), rgb(0xF2F3F5), rgb(0x9AA1AC), rgb(0x7F868F), rgb(0x3A3F47)};
  }
  return {rgb(0xFAFBFC), rgb(0xDDE2E8), rgb(0x16191D), rgb(0x6B727C), rgb(0xC3C7CD), rgb(0xC9CED5)};
}

Rgba faded(Rgba colour, Theme theme) {
  constexpr double share = 0.72;
  return mixed(colour, theme_colours(theme).veil, share);
}

}  // namespace laywright
