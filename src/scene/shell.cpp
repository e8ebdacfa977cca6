#include "scene/shell.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numbers>
#include <utility>

namespace laywright {

namespace {

std::size_t words_of(const ShellGrid& grid) { return (grid.columns + 63) / 64; }

// As std::floor, which is a call on processors without an instruction for it.
std::ptrdiff_t rounded_down(double value) {
  const auto cut = static_cast<std::ptrdiff_t>(value);
  return cut - (static_cast<double>(cut) > value ? 1 : 0);
}

// Newest nodes are painted first; a texel that is taken keeps its node. Free texels are kept as bits, so that a node
// that lies under newer ones costs one look.
class BackwardPainter {
 public:
  // `covered`: texels that any node of the build covers, as bits; the others are never looked for. `covered_in_column`
  // counts them.
  BackwardPainter(const ShellGrid& grid, double fiber_diameter_mm, const std::vector<std::uint64_t>& covered,
                  const std::vector<std::uint32_t>& covered_in_column, std::vector<std::uint32_t> recycled)
      : grid_(grid),
        columns_per_mm_(1.0 / grid.column_mm),
        words_(words_of(grid)),
        half_width_(0.5 * std::max(fiber_diameter_mm, grid.column_mm) / grid.column_mm),
        nodes_(std::move(recycled)),
        free_(covered),
        free_in_column_(covered_in_column) {
    nodes_.assign(grid.texels(), no_node);
    for (const std::uint32_t count : free_in_column_) free_texels_ += count;
  }

  [[nodiscard]] bool done() const { return free_texels_ == 0; }
  [[nodiscard]] bool any_free(std::size_t first, std::size_t end) const {
    return std::any_of(free_in_column_.begin() + static_cast<std::ptrdiff_t>(first),
                       free_in_column_.begin() + static_cast<std::ptrdiff_t>(end),
                       [](std::uint32_t count) { return count > 0; });
  }

  void paint(std::size_t row, double x_mm, std::uint32_t node) {
    const double middle = (x_mm - grid_.x_from_mm) * columns_per_mm_ - 0.5;
    const std::ptrdiff_t low = -rounded_down(half_width_ - middle), high = rounded_down(middle + half_width_);
    if (high < 0 || low >= static_cast<std::ptrdiff_t>(grid_.columns) || low > high) return;
    const std::size_t first = low <= 0 ? 0 : static_cast<std::size_t>(low);
    const std::size_t last = std::min(static_cast<std::size_t>(high), grid_.columns - 1);
    for (std::size_t word = first / 64; word <= last / 64; ++word) {
      std::uint64_t mask = ~std::uint64_t{0};
      if (word == first / 64) mask &= ~std::uint64_t{0} << (first % 64);
      if (word == last / 64) mask &= ~std::uint64_t{0} >> (63 - last % 64);
      take(row, word, mask, node);
    }
  }

  // Free texels get the node that an older shell has there.
  std::vector<std::uint32_t> finish(const std::vector<std::uint32_t>* older) {
    if (older != nullptr && !done()) {
      for (std::size_t i = 0; i < nodes_.size(); ++i) {
        if (nodes_[i] == no_node) nodes_[i] = (*older)[i];
      }
    }
    return std::move(nodes_);
  }

 private:
  void take(std::size_t row, std::size_t word, std::uint64_t mask, std::uint32_t node) {
    std::uint64_t& free = free_[row * words_ + word];
    std::uint64_t taken = free & mask;
    if (taken == 0) return;
    free &= ~mask;
    std::uint32_t* const texels = &nodes_[row * grid_.columns + word * 64];
    std::uint32_t* const counts = &free_in_column_[word * 64];
    for (; taken != 0; taken &= taken - 1) {
      const int bit = std::countr_zero(taken);
      texels[bit] = node;
      --counts[bit];
      --free_texels_;
    }
  }

  const ShellGrid& grid_;
  double columns_per_mm_;
  std::size_t words_;
  double half_width_;  // columns
  std::size_t free_texels_ = 0;
  std::vector<std::uint32_t> nodes_;
  std::vector<std::uint64_t> free_;
  std::vector<std::uint32_t> free_in_column_;
};

}  // namespace

ShellGrid ShellGrid::of(const Plan& plan, const Build& build, const ShellSettings& settings) {
  const Spool& spool = plan.spool();
  const double rim = 0.5 * spool.flange_diameter_mm, left = 0.5 * spool.barrel_diameter_mm;
  const double right = left + 0.5 * spool.barrel_taper_mm;
  const double opening = std::tan(spool.flange_taper_rad), wobble = 0.5 * spool.flange_runout_mm;
  const double left_reach = opening * std::max(0.0, rim - left) + wobble;
  const double right_reach = opening * std::max(0.0, rim - right) + wobble;
  const double span = spool.inside_width_mm + left_reach + right_reach;

  ShellGrid grid;
  grid.stations = static_cast<std::size_t>(build.stations_per_turn);
  grid.rows = std::min(grid.stations, settings.most_rows);
  const std::size_t most =
      std::max<std::size_t>(1, std::min(settings.most_columns, settings.most_texels / grid.rows));
  const double wanted = std::ceil(span / build.fiber_diameter_mm * settings.columns_per_d);
  grid.columns = wanted < static_cast<double>(most) ? static_cast<std::size_t>(std::max(1.0, wanted)) : most;
  grid.x_from_mm = -left_reach;
  grid.column_mm = span / static_cast<double>(grid.columns);
  return grid;
}

double ShellGrid::angle(std::size_t row) const {
  return 2.0 * std::numbers::pi * static_cast<double>(row) / static_cast<double>(rows);
}

ShellIndex::ShellIndex(const Plan& plan, const Build& build, const TurnIndex& turns, const ShellSettings& settings)
    : grid_(ShellGrid::of(plan, build, settings)),
      row_of_station_(grid_.stations, no_node),
      covered_(grid_.rows * words_of(grid_)),
      spacing_(std::max<std::size_t>(1, grid_.texels())) {
  for (std::size_t row = 0; row < grid_.rows; ++row)
    row_of_station_[grid_.station(row)] = static_cast<std::uint32_t>(row);
  const double reach = 0.5 * std::max(build.fiber_diameter_mm, grid_.column_mm) + grid_.column_mm;
  const auto column = [&](double x) {
    const double at = std::clamp((x - grid_.x_from_mm) / grid_.column_mm, 0.0, static_cast<double>(grid_.columns));
    return static_cast<std::uint32_t>(at);
  };
  for (std::size_t t = 0; t < turns.turns(); ++t) {
    const TurnExtent& extent = turns.levels().front()[t];
    columns_of_turn_.push_back({column(extent.x_min - reach), column(extent.x_max + reach)});
  }

  // Until it is known what stays bare, every texel is looked for.
  note_covered(std::vector<std::uint32_t>(grid_.texels(), 0));
  for (std::size_t end = spacing_; end <= build.nodes.size(); end += spacing_) kept_.push_back(newest(build, end));
  note_covered(newest(build, build.nodes.size()));
}

void ShellIndex::note_covered(const std::vector<std::uint32_t>& whole) {
  std::fill(covered_.begin(), covered_.end(), 0);
  covered_in_column_.assign(grid_.columns, 0);
  for (std::size_t i = 0; i < whole.size(); ++i) {
    if (whole[i] == no_node) continue;
    const std::size_t row = i / grid_.columns, column = i % grid_.columns;
    covered_[row * words_of(grid_) + column / 64] |= std::uint64_t{1} << (column % 64);
    ++covered_in_column_[column];
  }
}

std::vector<std::uint32_t> ShellIndex::newest(const Build& build, std::size_t end,
                                              std::vector<std::uint32_t> recycled) const {
  const std::size_t older = std::min(end / spacing_, kept_.size());
  const std::size_t begin = older * spacing_, stations = grid_.stations;
  BackwardPainter painter(grid_, build.fiber_diameter_mm, covered_, covered_in_column_, std::move(recycled));
  for (std::size_t turn = (end + stations - 1) / stations; turn > begin / stations && !painter.done();) {
    --turn;
    const ColumnRange columns = columns_of_turn_[turn];
    if (!painter.any_free(columns.first, columns.end)) continue;
    const std::size_t first = turn * stations;
    for (std::size_t k = std::min(end, first + stations); k > std::max(begin, first);) {
      --k;
      const std::uint32_t row = row_of_station_[k - first];
      if (row != no_node) painter.paint(row, build.nodes.x(k), static_cast<std::uint32_t>(k));
    }
  }
  return painter.finish(older > 0 ? &kept_[older - 1] : nullptr);
}

std::size_t ShellIndex::bytes() const {
  std::size_t sum = columns_of_turn_.size() * sizeof(ColumnRange);
  sum += row_of_station_.size() * sizeof(std::uint32_t) + covered_.size() * sizeof(std::uint64_t);
  for (const auto& shell : kept_) sum += shell.size() * sizeof(std::uint32_t);
  return sum;
}

}  // namespace laywright
