#include "render/shell_levels.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

using Texel = std::array<std::uint8_t, 4>;

std::uint8_t signed_byte(double value) {
  return static_cast<std::uint8_t>(128.0 + std::round(127.0 * std::clamp(value, -1.0, 1.0)));
}

std::uint8_t times(std::uint8_t channel, std::uint8_t cover) {
  return static_cast<std::uint8_t>((channel * cover + 127) / 255);
}

// Slope of the surface around the spool, mm per mm of arc. Where another fiber begins the surface jumps; a jump is
// an edge, not a slope.
double slope_around(const Shell& shell, std::size_t row, std::size_t column) {
  const std::size_t rows = shell.grid.rows;
  const std::size_t before = shell.index((row + rows - 1) % rows, column);
  const std::size_t after = shell.index((row + 1) % rows, column);
  const double rise = static_cast<double>(shell.radius_mm[after]) - static_cast<double>(shell.radius_mm[before]);
  if (std::abs(rise) > shell.fiber_diameter_mm / 2) return 0.0;
  const double arc = static_cast<double>(shell.radius_mm[shell.index(row, column)]) *
                     (4.0 * std::numbers::pi / static_cast<double>(rows));
  return rise / arc;
}

class Atlas {
 public:
  Atlas(ShellLevels& levels, std::vector<std::uint8_t>& bytes) : levels_(levels), bytes_(bytes) {
    bytes_.resize(levels.width * levels.rows * 4);
  }
  [[nodiscard]] std::uint8_t* at(std::size_t level, std::size_t row, std::size_t column) {
    return &bytes_[(row * levels_.width + static_cast<std::size_t>(levels_.starts[level]) + column) * 4];
  }

  // Fills the coarser levels and the spare columns of a row whose finest level stands.
  void finish(std::size_t row, std::size_t columns) {
    for (std::size_t level = 0; level < levels_.levels; ++level) {
      const std::size_t width = std::max<std::size_t>(columns >> level, 1);
      for (std::size_t column = 0; level > 0 && column < width; ++column) {
        const std::size_t finer = std::max<std::size_t>(columns >> (level - 1), 1);
        const std::uint8_t* a = at(level - 1, row, std::min(2 * column, finer - 1));
        const std::uint8_t* b = at(level - 1, row, std::min(2 * column + 1, finer - 1));
        std::uint8_t* mean = at(level, row, column);
        for (std::size_t c = 0; c < 4; ++c) mean[c] = static_cast<std::uint8_t>((a[c] + b[c] + (column & 1U)) / 2);
      }
      std::copy_n(at(level, row, 0), 4, at(level, row, 0) - 4);
      std::copy_n(at(level, row, width - 1), 4, at(level, row, width));
    }
  }

 private:
  ShellLevels& levels_;
  std::vector<std::uint8_t>& bytes_;
};

void lay_out(ShellLevels& levels, const ShellGrid& grid) {
  levels.rows = grid.rows;
  std::size_t next = 1;
  for (std::size_t width = grid.columns; levels.levels < ShellLevels::most_levels; width /= 2) {
    levels.starts[levels.levels++] = static_cast<int>(next);
    next += width + 2;
    if (width <= 4) break;
  }
  levels.width = next - 1;
}

void make_mesh(ShellLevels& levels, const Shell& shell) {
  const ShellGrid& grid = shell.grid;
  const std::size_t group = std::max<std::size_t>(grid.columns / 192, 1);
  levels.mesh_columns = (grid.columns + group - 1) / group;
  levels.mesh_column_mm = grid.column_mm * static_cast<double>(group);
  levels.mesh_radius_mm.resize(levels.mesh_columns * grid.rows);
  for (std::size_t row = 0; row < grid.rows; ++row)
    for (std::size_t column = 0; column < levels.mesh_columns; ++column) {
      const std::size_t from = column * group, to = std::min(from + group, grid.columns);
      float sum = 0.0F;
      for (std::size_t i = from; i < to; ++i) sum += shell.radius_mm[shell.index(row, i)];
      levels.mesh_radius_mm[row * levels.mesh_columns + column] = sum / static_cast<float>(to - from);
    }
}

}  // namespace

ShellLevels make_levels(const Shell& shell) {
  ShellLevels levels;
  lay_out(levels, shell.grid);
  Atlas skin(levels, levels.skin), bent(levels, levels.bent);
  for (std::size_t row = 0; row < shell.grid.rows; ++row) {
    for (std::size_t column = 0; column < shell.grid.columns; ++column) {
      const std::size_t i = shell.index(row, column);
      const Rgba& color = shell.colour[i];
      const Texel look{times(color.r, color.a), times(color.g, color.a), times(color.b, color.a), color.a};
      const Texel bend{signed_byte(static_cast<double>(shell.across[i]) / 127.0),
                       signed_byte(slope_around(shell, row, column)), shell.openness[i], 255};
      std::copy(look.begin(), look.end(), skin.at(0, row, column));
      std::copy(bend.begin(), bend.end(), bent.at(0, row, column));
    }
    skin.finish(row, shell.grid.columns);
    bent.finish(row, shell.grid.columns);
  }
  make_mesh(levels, shell);
  return levels;
}

}  // namespace laywright
