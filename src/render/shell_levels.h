// A shell made ready for drawing from any distance: its look at the full number of columns, and at half, a quarter and
// so on, each the mean of two columns of the one before. Only along x: turns run around the spool.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "scene/shell.h"

namespace laywright {

struct ShellLevels {
  static constexpr std::size_t most_levels = 12;

  std::size_t levels = 0;
  std::array<int, most_levels> starts{};  // first column of each level in the atlas; a copy of its neighbour stands
                                          // on either side of a level, so that filtering does not reach over
  std::size_t width = 0, rows = 0;        // of the atlas
  std::vector<std::uint8_t> skin;         // red, green, blue (each times the cover), cover
  std::vector<std::uint8_t> bent;         // slope of the fiber's round along x, of the radius around the spool (both
                                          // 128 + 127 s), openness, 255

  // For the mesh: mean radius of groups of columns, so that about 192 remain. Row after row.
  std::size_t mesh_columns = 0;
  double mesh_column_mm = 0.0;
  std::vector<float> mesh_radius_mm;
};

[[nodiscard]] ShellLevels make_levels(const Shell& shell);

}  // namespace laywright
