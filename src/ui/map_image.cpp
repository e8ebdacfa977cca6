#include "ui/map_image.h"

#include <algorithm>

namespace laywright {
namespace {

constexpr std::size_t most_columns = 1024;

}  // namespace

PanelImage map_image(const Scene& scene) {
  const Shell& shell = scene.shell;
  const ShellGrid& grid = shell.grid;
  const std::size_t each = std::max<std::size_t>(1, (grid.columns + most_columns - 1) / most_columns);
  const std::size_t columns = std::max<std::size_t>(1, grid.columns / each);
  PanelImage image;
  image.width = static_cast<int>(columns);
  image.height = static_cast<int>(grid.rows);
  image.pixels.assign(columns * grid.rows, Rgba{});
  for (std::size_t row = 0; row < grid.rows; ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      float sum[3]{};
      for (std::size_t i = 0; i < each; ++i) {
        const std::size_t at = shell.index(row, column * each + i);
        const Rgba c = shell.colour[at].a > 0 ? shell.colour[at] : Rgba{150, 150, 155, 255};
        const float lean = static_cast<float>(shell.across[at]) / 127.0F;
        const float light =
            (0.55F + 0.45F * static_cast<float>(shell.openness[at]) / 255.0F) * (1.0F - 0.45F * lean * lean);
        sum[0] += light * c.r;
        sum[1] += light * c.g;
        sum[2] += light * c.b;
      }
      const auto mean = [&](float s) { return static_cast<std::uint8_t>(s / static_cast<float>(each)); };
      image.pixels[row * columns + column] = {mean(sum[0]), mean(sum[1]), mean(sum[2]), 255};
    }
  }
  return image;
}

}  // namespace laywright
