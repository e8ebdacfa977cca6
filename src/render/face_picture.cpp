#include "render/face_picture.h"

namespace laywright {
namespace {

// Deep shade between round fibers: dark in either theme.
constexpr Rgba shade{0x26, 0x26, 0x2A, 255};

std::uint8_t mixed(std::uint8_t over, std::uint8_t under, std::uint8_t cover) {
  return static_cast<std::uint8_t>((over * cover + under * (255 - cover) + 127) / 255);
}

Rgba over_shade(const Rgba& color) {
  return {mixed(color.r, shade.r, color.a), mixed(color.g, shade.g, color.a), mixed(color.b, shade.b, color.a), 255};
}

}  // namespace

std::vector<Rgba> fill_voids(const std::vector<Rgba>& colour, std::size_t depth, std::size_t along,
                             std::size_t lines, std::size_t between_lines) {
  std::vector<Rgba> filled(colour.size(), Rgba{0, 0, 0, 0});
  for (std::size_t line = 0; line < lines; ++line) {
    const std::size_t first = line * between_lines;
    std::size_t top = depth;  // one past the outermost pixel that is half fiber
    while (top > 0 && colour[first + (top - 1) * along].a < 128) --top;
    for (std::size_t i = 0; i < top; ++i) filled[first + i * along] = over_shade(colour[first + i * along]);
  }
  return filled;
}

}  // namespace laywright
