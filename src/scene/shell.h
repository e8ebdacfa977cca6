// The outer surface of what is visible, as a height field: what a far view draws instead of the turns.
//
// Rows are stations (or every so many, when there are more than most_rows), columns are places along x. A texel holds
// the uppermost fiber at its row's angle and its column's middle.
//
// The rule that makes it cheap: at a station, the newest turn over a place is the uppermost. The lay model puts a
// circle nowhere below the offset surface, so where two circles overlap in x the newer centre is the higher one; the
// circles do not penetrate each other, so the newer one's upper edge is the higher one throughout. Hence texel =
// newest node at or before the end that covers the place, and painting goes backward from the end until every texel
// is covered. Builds that were not laid by lay() must keep the rule, too.
//
// So that places that stay bare do not lead back to the start of the wind, the index keeps the nodes of a whole
// shell after every so many nodes as a shell has texels (4 bytes per node of the build); painting goes back to the
// one before it at most, and does not look for what the whole build leaves bare. Cost: about one shell's worth of nodes, whatever the number of turns.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "lay/build.h"
#include "plan/lay_plan.h"
#include "scene/coordinates.h"
#include "scene/turn_index.h"

namespace laywright {

struct ShellSettings {
  double columns_per_d = 8.0;
  std::size_t most_columns = 4096;
  std::size_t most_rows = 1024;
  std::size_t most_texels = 1U << 20U;
};

// The places of the texels, the same for all shells of a build.
struct ShellGrid {
  std::size_t columns = 0, rows = 0;
  double x_from_mm = 0.0;  // left edge of the first column: it covers the opening of tapered flanges
  double column_mm = 0.0;
  std::size_t stations = 0;  // per turn, of the build

  [[nodiscard]] static ShellGrid of(const Plan& plan, const Build& build, const ShellSettings& settings = {});

  [[nodiscard]] std::size_t texels() const { return columns * rows; }
  [[nodiscard]] double x(std::size_t column) const {
    return x_from_mm + (static_cast<double>(column) + 0.5) * column_mm;
  }
  // Exactly the row's angle while rows == stations; otherwise the nearest station, less than half a station off.
  [[nodiscard]] std::size_t station(std::size_t row) const { return (row * stations + rows / 2) / rows % stations; }
  // Rows stand evenly around the spool: 2 pi row / rows.
  [[nodiscard]] double angle(std::size_t row) const;
};

// All arrays: rows * columns, columns running fastest: index = row * columns + column.
struct Shell {
  ShellGrid grid;
  double fiber_diameter_mm = 0.0;
  std::vector<float> radius_mm;  // outer radius there; of the barrel where nothing lies
  std::vector<float>
      crest_mm;  // greatest r of a fiber's centre a few diameters around: what lies deeper is in shade
  std::vector<std::uint32_t> node;  // no_node where the barrel is bare
  std::vector<Rgba> colour;         // alpha 0 where bare or gone
  std::vector<std::int8_t> across;  // 127 (x - x of the fiber's centre) / (d / 2): the normal in the axial section
                                    // is (s, sqrt(1 - s^2)) with s = across / 127, in x and r; 0 where bare
  std::vector<std::uint8_t> openness;  // share of the sky that is seen from there, 255 = all: ambient occlusion

  [[nodiscard]] std::size_t index(std::size_t row, std::size_t column) const { return row * grid.columns + column; }
};

// The nodes of whole shells along the wind. Made once per build and shared by all views of it.
class ShellIndex {
 public:
  // `turns` is of the build.
  ShellIndex(const Plan& plan, const Build& build, const TurnIndex& turns, const ShellSettings& settings = {});

  [[nodiscard]] const ShellGrid& grid() const { return grid_; }

  // For each texel the newest of the nodes [0, end) that covers it, or no_node. `end` at most the build's nodes.
  // The build must be the one that the index was made from. The memory of `recycled` is used again.
  [[nodiscard]] std::vector<std::uint32_t> newest(const Build& build, std::size_t end,
                                                  std::vector<std::uint32_t> recycled = {}) const;

  [[nodiscard]] std::size_t bytes() const;

 private:
  ShellGrid grid_;
  void note_covered(const std::vector<std::uint32_t>& whole);

  // Columns that a turn can cover.
  struct ColumnRange {
    std::uint32_t first = 0, end = 0;
  };
  std::vector<ColumnRange> columns_of_turn_;
  std::vector<std::uint32_t> row_of_station_;     // no_node for a station without a row
  std::vector<std::uint64_t> covered_;            // bits of the texels that the whole build covers
  std::vector<std::uint32_t> covered_in_column_;  // their number
  std::vector<std::vector<std::uint32_t>> kept_;  // [i]: of the nodes [0, (i + 1) * spacing)
  std::size_t spacing_ = 1;
};

// Light that reaches a fiber so far below the crest around it, 0 to 1: a tenth of a diameter is rounding, at two
// it is as dark as it gets. An estimate, for the eye.
[[nodiscard]] float light_at_depth(float depth_d);

// Greatest of the values up to `reach` places to either side; `room` is used on the way.
void greatest_around(const float* values, std::size_t count, std::size_t reach, float* greatest,
                     std::vector<float>& room);

// Openness of each texel from the heights around it: along x in both directions, and around the spool, the horizon
// within a few fiber diameters. Exactly 255 on a smooth cylinder.
[[nodiscard]] std::vector<std::uint8_t> openness_of(const ShellGrid& grid, const std::vector<float>& radius_mm,
                                                    double fiber_diameter_mm,
                                                    std::vector<std::uint8_t> recycled = {});

}  // namespace laywright
