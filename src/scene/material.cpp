#include "scene/material.h"

#include <array>
#include <string_view>

#include "measure/fiber_look.h"
#include "plan/mixed_colour.h"
#include "scene/palette.h"

namespace laywright {
namespace {

struct ColourWord {
  const char* word;
  Rgba colour;
};
// In the order of FiberColour, without the natural one. Own choices near the words; no source.
constexpr std::array<ColourWord, 12> colour_words{{{"white", {0xF2, 0xF2, 0xEE, 255}},
                                                   {"grey", {0x8C, 0x90, 0x94, 255}},
                                                   {"black", {0x2A, 0x2B, 0x2E, 255}},
                                                   {"blue", {0x2F, 0x62, 0xB5, 255}},
                                                   {"turquoise", {0x3A, 0xB7, 0xB5, 255}},
                                                   {"green", {0x3B, 0x8F, 0x4E, 255}},
                                                   {"yellow", {0xE9, 0xC8, 0x3A, 255}},
                                                   {"orange", {0xE5, 0x83, 0x2E, 255}},
                                                   {"brown", {0x7B, 0x52, 0x37, 255}},
                                                   {"red", {0xC2, 0x39, 0x36, 255}},
                                                   {"rose", {0xE8, 0x96, 0xA8, 255}},
                                                   {"violet", {0x7A, 0x56, 0xA6, 255}}}};

Material natural(FiberLook look) {
  switch (look) {
    case FiberLook::copper: return {"copper", {0xC8, 0x7A, 0x4E, 255}, {1.0F, 0.0F}};
    case FiberLook::enamelled: return {"enamelled wire", {0xA8, 0x56, 0x2A, 255}, {0.75F, 0.35F}};
    case FiberLook::steel: return {"steel", {0x9D, 0xA3, 0xAA, 255}, {1.0F, 0.0F}};
    case FiberLook::yarn: return {"yarn", {0xE8, 0xE0, 0xCF, 255}, {0.0F, 0.0F}};
    case FiberLook::glass: return {"bare glass", {0xC9, 0xDA, 0xDD, 255}, {0.0F, 1.0F}};
    case FiberLook::usual:
    case FiberLook::coated: break;
  }
  return {"coated fiber", {0xDC, 0xD9, 0xCF, 255}, {0.0F, 0.45F}};
}

}  // namespace

Material fiber_material(const Plan& plan) {
  const Fiber& fiber = plan.fiber();
  const FiberLook look = look_of(plan);
  Material material = natural(look);
  const bool bare = look == FiberLook::copper || look == FiberLook::steel || look == FiberLook::glass;
  if (bare || fiber.colour == FiberColour::natural) return material;
  if (const auto mix = mix_of(fiber.colour)) {
    material.name += ", " + mixed_text(fiber.colour);
    material.colour = rgb(*mix);
  } else {
    const ColourWord& word = colour_words.at(static_cast<std::size_t>(fiber.colour) - 1);
    material.name += std::string(", ") + word.word;
    material.colour = word.colour;
  }
  // An enamel that is coloured lets less of the metal through.
  if (look == FiberLook::enamelled) material.sheen.metal = 0.5F;
  return material;
}

Material spool_material(const Plan& plan, Theme theme) {
  const bool dark = theme == Theme::dark;
  switch (plan.spool().look) {
    case SpoolLook::wood: return {"wood", dark ? Rgba{0x9A, 0x74, 0x4A, 255} : Rgba{0xCB, 0xA5, 0x74, 255}, {}};
    case SpoolLook::steel:
      return {"steel", dark ? Rgba{0x7C, 0x84, 0x8D, 255} : Rgba{0xA9, 0xB0, 0xB8, 255}, {0.7F, 0.0F}};
    case SpoolLook::plastic: break;
  }
  return {"plastic", theme_colours(theme).spool, {}};
}

}  // namespace laywright
