#include "render/gap_layer.h"

#include <algorithm>
#include <cstddef>
#include <numbers>

namespace laywright {
namespace {

constexpr std::uint8_t gap_code = 1 + static_cast<std::uint8_t>(FindingKind::gap);

struct Strip {
  float from_x = 0.0F, to_x = 0.0F, from_angle = 0.0F, to_angle = 0.0F;
  float radius = 0.0F, cover = 0.0F;
};

// The part of a row that the cuts leave; its middle is left.
Sector row_left(const std::vector<Sector>& shown, double angle, double half) {
  for (const Sector& sector : shown) {
    for (const double around : {angle, angle + 2.0 * std::numbers::pi}) {
      if (around >= sector.from && around <= sector.to)
        return {std::max(around - half, sector.from), std::min(around + half, sector.to)};
    }
  }
  return {angle - half, angle + half};
}

// Narrow gaps are lit strongly. Where turns are meant to lie far apart, most of the wind is gap, and must be seen.
float cover_of(double width_d) {
  constexpr double strong = 0.85, faint = 0.16, narrow_d = 1.5, wide_d = 5.0;
  const double share = std::clamp((width_d - narrow_d) / (wide_d - narrow_d), 0.0, 1.0);
  return static_cast<float>(strong + (faint - strong) * share);
}

// Runs of lit texels of a row, within what the view leaves of x; one strip to each fiber that lies beneath.
void add_row(const Scene& scene, std::size_t row, const Sector& around, std::vector<Strip>& strips) {
  const Shell& shell = scene.shell;
  const ShellGrid& grid = shell.grid;
  const std::size_t begin = shell.index(row, 0);
  const auto from_angle = static_cast<float>(around.from), to_angle = static_cast<float>(around.to);
  const auto is_lit = [&](std::size_t c) { return c < grid.columns && scene.lit[begin + c] == gap_code; };
  for (std::size_t c = 0; c < grid.columns; ++c) {
    if (!is_lit(c)) continue;
    std::size_t gap_end = c;
    while (is_lit(gap_end)) ++gap_end;
    const double width_mm = static_cast<double>(gap_end - c) * grid.column_mm;
    const float cover = cover_of(width_mm / shell.fiber_diameter_mm);
    while (c < gap_end) {
      std::size_t end = c;
      float highest = 0.0F;  // it is round
      for (; end < gap_end && shell.node[begin + end] == shell.node[begin + c]; ++end)
        highest = std::max(highest, shell.radius_mm[begin + end]);
      const double from = std::max(grid.x(c) - 0.5 * grid.column_mm, scene.x_from_mm);
      const double to = std::min(grid.x(end - 1) + 0.5 * grid.column_mm, scene.x_to_mm);
      if (from < to)
        strips.push_back({static_cast<float>(from), static_cast<float>(to), from_angle, to_angle, highest, cover});
      c = end;
    }
  }
}

}  // namespace

void GapLayer::load(const Scene& scene) {
  std::vector<Strip> strips;
  const double half_row = std::numbers::pi / static_cast<double>(std::max<std::size_t>(1, scene.shell.grid.rows));
  const std::vector<Sector> shown = left_by(scene.removed);
  for (std::size_t row = 0; row < scene.shell.grid.rows && !scene.lit.empty(); ++row) {
    const double angle = scene.shell.grid.angle(row);
    if (!is_removed(scene.removed, angle)) add_row(scene, row, row_left(shown, angle, half_row), strips);
  }
  strips_.load(strips.data(), strips.size() * sizeof(Strip), strips.size());
  strips_.floats(1, 4, sizeof(Strip), offsetof(Strip, from_x));
  strips_.floats(2, 2, sizeof(Strip), offsetof(Strip, radius));
}

void GapLayer::draw(const Frame& frame) const {
  if (strips_.empty()) return;
  frame.use(program_);
  program_.set("lift", 0.1F * frame.fiber_radius_mm);
  program_.set("tint", rgb_of(finding_rgba(FindingKind::gap)));
  strips_.draw();
}

}  // namespace laywright
