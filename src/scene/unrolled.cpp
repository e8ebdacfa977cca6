#include "scene/unrolled.h"

#include <algorithm>

namespace laywright {

namespace {

constexpr Rgba bare_barrel{150, 150, 155, 255};

struct Light {
  float r = 0.0F, g = 0.0F, b = 0.0F;
};

Light light_of(const Shell& shell, std::size_t index) {
  const Rgba& colour = shell.colour[index].a > 0 ? shell.colour[index] : bare_barrel;
  const float lean = static_cast<float>(shell.across[index]) / 127.0F;
  const float light =
      (0.55F + 0.45F * static_cast<float>(shell.openness[index]) / 255.0F) * (1.0F - 0.45F * lean * lean);
  return {light * colour.r, light * colour.g, light * colour.b};
}

Rgba rgba_of(const Light& sum, float count) {
  const auto channel = [count](float value) { return static_cast<std::uint8_t>(value / count); };
  return {channel(sum.r), channel(sum.g), channel(sum.b), 255};
}

}  // namespace

UnrolledShell unroll(const Shell& shell, std::size_t most_columns) {
  const ShellGrid& grid = shell.grid;
  const std::size_t each = std::max<std::size_t>(1, (grid.columns + most_columns - 1) / most_columns);
  UnrolledShell flat;
  flat.columns = std::max<std::size_t>(1, grid.columns / each);
  flat.rows = grid.rows;
  flat.pixels.reserve(flat.columns * flat.rows);
  for (std::size_t row = 0; row < grid.rows; ++row) {
    for (std::size_t column = 0; column < flat.columns; ++column) {
      Light sum;
      for (std::size_t i = 0; i < each; ++i) {
        const Light light = light_of(shell, shell.index(row, column * each + i));
        sum.r += light.r;
        sum.g += light.g;
        sum.b += light.b;
      }
      flat.pixels.push_back(rgba_of(sum, static_cast<float>(each)));
    }
  }
  return flat;
}

}  // namespace laywright
