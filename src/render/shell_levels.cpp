#include "render/shell_levels.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numbers>

namespace laywright {
namespace {

// Four bytes as one number, whatever its order: means are taken of all four at once.
using Texel = std::uint32_t;

Texel texel_of(std::uint8_t a, std::uint8_t b, std::uint8_t c, std::uint8_t d) {
  const std::array<std::uint8_t, 4> bytes{a, b, c, d};
  Texel texel = 0;
  std::memcpy(&texel, bytes.data(), sizeof texel);
  return texel;
}

// Means of two bytes, four times over, rounded down or up.
constexpr Texel without_lowest = 0xFEFEFEFE;
Texel mean_down(Texel a, Texel b) { return (a & b) + (((a ^ b) & without_lowest) >> 1); }
Texel mean_up(Texel a, Texel b) { return (a | b) - (((a ^ b) & without_lowest) >> 1); }

std::uint8_t times(std::uint8_t channel, std::uint8_t cover) {
  return static_cast<std::uint8_t>((channel * cover + 127) / 255);
}

Texel look_of(const Rgba& color) {
  if (color.a == 255) return texel_of(color.r, color.g, color.b, 255);
  return texel_of(times(color.r, color.a), times(color.g, color.a), times(color.b, color.a), color.a);
}

// Slopes of the surface around the spool, mm per mm of arc, as 128 + 127 s. Where another fiber begins the surface
// jumps; a jump is an edge, not a slope.
class SlopesAround {
 public:
  explicit SlopesAround(const Shell& shell)
      : shell_(shell),
        edge_mm_(static_cast<float>(shell.fiber_diameter_mm / 2)),
        per_row_(static_cast<float>(static_cast<double>(shell.grid.rows) / (4.0 * std::numbers::pi))),
        slopes_(shell.grid.columns) {}

  const std::vector<std::uint8_t>& of_row(std::size_t row) {
    const std::size_t rows = shell_.grid.rows, columns = shell_.grid.columns;
    const float* const radius = shell_.radius_mm.data();
    const float* const here = radius + row * columns;
    const float* const before = radius + (row + rows - 1) % rows * columns;
    const float* const after = radius + (row + 1) % rows * columns;
    std::uint8_t* const slopes = slopes_.data();
    for (std::size_t c = 0; c < columns; ++c) {
      const float rise = after[c] - before[c];
      const float slope = std::clamp(rise * per_row_ / here[c], -1.0F, 1.0F);
      slopes[c] =
          static_cast<std::uint8_t>(std::abs(rise) > edge_mm_ ? 128 : static_cast<int>(128.5F + 127.0F * slope));
    }
    return slopes_;
  }

 private:
  const Shell& shell_;
  float edge_mm_, per_row_;
  std::vector<std::uint8_t> slopes_;
};

// The levels of one row, side by side, put together and then copied into the atlas.
class AtlasRow {
 public:
  explicit AtlasRow(const ShellLevels& levels) : levels_(levels), texels_(levels.width) {}

  [[nodiscard]] Texel* finest() { return at(0); }

  // Fills the coarser levels and the spare columns, once the finest level stands, and copies all to where it belongs.
  void finish(std::size_t columns, std::uint8_t* to) {
    for (std::size_t level = 0; level < levels_.levels; ++level) {
      const std::size_t width = std::max<std::size_t>(columns >> level, 1);
      if (level > 0) halve(at(level - 1), std::max<std::size_t>(columns >> (level - 1), 1), at(level), width);
      at(level)[-1] = at(level)[0];
      at(level)[width] = at(level)[width - 1];
    }
    std::memcpy(to, texels_.data(), texels_.size() * sizeof(Texel));
  }

 private:
  [[nodiscard]] Texel* at(std::size_t level) { return texels_.data() + levels_.starts[level]; }

  // Rounded down and up in turn, so that it does not become darker from level to level.
  static void halve(const Texel* fine, std::size_t fine_width, Texel* coarse, std::size_t width) {
    const std::size_t pairs = std::min(width, fine_width / 2);
    for (std::size_t i = 0; i + 1 < pairs; i += 2) {
      coarse[i] = mean_down(fine[2 * i], fine[2 * i + 1]);
      coarse[i + 1] = mean_up(fine[2 * i + 2], fine[2 * i + 3]);
    }
    if (pairs % 2 == 1) coarse[pairs - 1] = mean_down(fine[2 * pairs - 2], fine[2 * pairs - 1]);
    if (pairs < width) coarse[pairs] = fine[fine_width - 1];
  }

  const ShellLevels& levels_;
  std::vector<Texel> texels_;
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
  levels.skin.resize(levels.width * levels.rows * sizeof(Texel));
  levels.bent.resize(levels.skin.size());
  AtlasRow skin(levels), bent(levels);
  SlopesAround slopes(shell);
  const std::size_t columns = shell.grid.columns;
  for (std::size_t row = 0; row < shell.grid.rows; ++row) {
    const std::size_t first = shell.index(row, 0);
    const std::vector<std::uint8_t>& around = slopes.of_row(row);
    for (std::size_t c = 0; c < columns; ++c) {
      skin.finest()[c] = look_of(shell.colour[first + c]);
      bent.finest()[c] = texel_of(static_cast<std::uint8_t>(128 + shell.across[first + c]), around[c],
                                  shell.openness[first + c], 255);
    }
    const std::size_t to = row * levels.width * sizeof(Texel);
    skin.finish(columns, &levels.skin[to]);
    bent.finish(columns, &levels.bent[to]);
  }
  make_mesh(levels, shell);
  return levels;
}

}  // namespace laywright
