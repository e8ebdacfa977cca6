#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "scene/shell.h"

namespace laywright {

namespace {

// Steepness of the horizon from one texel towards others, greatest so far: rise over distance.
void raise_horizon(const float* here, const float* there, float per_distance, std::size_t count, float* steepness) {
  for (std::size_t i = 0; i < count; ++i) {
    const float slope = (there[i] - here[i]) * per_distance;
    steepness[i] = slope > steepness[i] ? slope : steepness[i];
  }
}

// A sky that is even in all directions lights a level place by cos^2 of the horizon's elevation in each direction
// (Lambert's law), which is 1 / (1 + slope^2).
void add_light(const std::vector<float>& steepness, std::vector<float>& light) {
  for (std::size_t i = 0; i < light.size(); ++i) light[i] += 1.0F / (1.0F + steepness[i] * steepness[i]);
}

}  // namespace

float light_at_depth(float depth_d) {
  constexpr float rounding = 0.25F, darkest = 0.3F, falls_over = 1.6F;
  const float deep = (depth_d - rounding) / falls_over;
  const float share = deep < 0.0F ? 0.0F : (deep > 1.0F ? 1.0F : deep);
  return 1.0F - (1.0F - darkest) * share * (2.0F - share);
}

// By doubling: of 1, 2, 4 and so on values from each place on, until two of them, laid over each other, reach across.
void greatest_around(const float* values, std::size_t count, std::size_t reach, float* greatest,
                     std::vector<float>& room) {
  const std::size_t wide = 2 * reach + 1;
  room.assign(count + 2 * reach, values[0]);
  std::copy_n(values, count, room.begin() + static_cast<std::ptrdiff_t>(reach));
  std::fill(room.end() - static_cast<std::ptrdiff_t>(reach), room.end(), values[count - 1]);
  std::size_t span = 1, left = room.size();
  const auto widen = [&](std::size_t by) {
    left -= by;
    float* const to = room.data();
    const float* const from = to + by;
    for (std::size_t i = 0; i < left; ++i) to[i] = from[i] > to[i] ? from[i] : to[i];
  };
  while (2 * span <= wide) {
    widen(span);
    span *= 2;
  }
  if (span < wide) widen(wide - span);
  std::copy_n(room.begin(), count, greatest);
}

std::vector<std::uint8_t> openness_of(const ShellGrid& grid, const std::vector<float>& radius_mm,
                                      double fiber_diameter_mm, std::vector<std::uint8_t> recycled) {
  // Of a diameter: how far the horizon is looked for along x. Walls that are farther away are seen as less steep.
  constexpr std::array<double, 4> distances{{0.25, 0.5, 1.0, 2.0}};
  const std::size_t columns = grid.columns;
  std::vector<std::size_t> steps;
  for (const double distance : distances) {
    const auto step = static_cast<std::size_t>(std::lround(distance * fiber_diameter_mm / grid.column_mm));
    if (step > 0 && step < columns && (steps.empty() || steps.back() != step)) steps.push_back(step);
  }
  std::vector<std::uint8_t> openness = std::move(recycled);
  openness.resize(radius_mm.size());
  std::vector<float> left(columns), right(columns), around(columns), light(columns);
  for (std::size_t row = 0; row < grid.rows; ++row) {
    const float* const here = &radius_mm[row * columns];
    std::fill(left.begin(), left.end(), 0.0F);
    std::fill(right.begin(), right.end(), 0.0F);
    std::fill(light.begin(), light.end(), 0.0F);
    for (const std::size_t step : steps) {
      const auto per_distance = static_cast<float>(1.0 / (static_cast<double>(step) * grid.column_mm));
      raise_horizon(here, here + step, per_distance, columns - step, right.data());
      raise_horizon(here + step, here, per_distance, columns - step, left.data() + step);
    }
    add_light(left, light);
    add_light(right, light);
    const auto per_row = static_cast<float>(1.0 / (grid.angle(1) * static_cast<double>(here[columns / 2])));
    for (const std::size_t other : {(row + 1) % grid.rows, (row + grid.rows - 1) % grid.rows}) {
      std::fill(around.begin(), around.end(), 0.0F);
      raise_horizon(here, &radius_mm[other * columns], per_row, columns, around.data());
      add_light(around, light);
    }
    std::uint8_t* const out = &openness[row * columns];
    for (std::size_t c = 0; c < columns; ++c) out[c] = static_cast<std::uint8_t>(light[c] * 63.75F + 0.5F);
  }
  return openness;
}

}  // namespace laywright
