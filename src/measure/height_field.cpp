#include "measure/height_field.h"

#include <algorithm>
#include <cmath>

namespace laywright {

namespace {

constexpr float nothing = -1.0e30F;
constexpr double points_per_diameter = 8.0;
constexpr double fewest_points = 64.0;
constexpr double most_points = 16384.0;

// to[i] = the greater of a[i] and b[i]; `to` may be `a`.
void greater_of(const float* a, const float* b, float* to, std::size_t count) {
  for (std::size_t i = 0; i < count; ++i) to[i] = a[i] > b[i] ? a[i] : b[i];
}

}  // namespace

SurfaceGrid SurfaceGrid::over(double width_mm, double fiber_diameter_mm, double opening_mm) {
  const double wanted = std::ceil(width_mm / fiber_diameter_mm * points_per_diameter);
  SurfaceGrid grid;
  grid.points = static_cast<std::size_t>(std::clamp(wanted, fewest_points, most_points));
  grid.spacing_mm = width_mm / static_cast<double>(grid.points);
  grid.beyond = static_cast<std::size_t>(std::ceil(opening_mm / grid.spacing_mm));
  grid.margin = grid.beyond + 2 * static_cast<std::size_t>(fiber_diameter_mm / grid.spacing_mm) + 8;
  return grid;
}

CirclePrint::CirclePrint(const SurfaceGrid& grid, double fiber_diameter_mm) {
  constexpr double overlap = 1.0e-3;  // in diameters
  const double radius = 0.5 * fiber_diameter_mm;
  half_width_mm_ = radius + overlap * fiber_diameter_mm;
  points_ = (static_cast<std::size_t>(2.0 * half_width_mm_ / grid.spacing_mm) / 4 + 1) * 4;
  heights_.resize(places * points_, nothing);
  for (std::size_t place = 0; place < places; ++place) {
    const double first = (static_cast<double>(place) + 0.5) / static_cast<double>(places) * grid.spacing_mm;
    for (std::size_t i = 0; i < points_; ++i) {
      const double offset = first + static_cast<double>(i) * grid.spacing_mm - half_width_mm_;
      if (std::abs(offset) > half_width_mm_) continue;
      const double under = std::max(0.0, radius * radius - offset * offset);
      heights_[place * points_ + i] = static_cast<float>(std::sqrt(under));
    }
  }
}

HeightField::HeightField(const SurfaceGrid& grid, const std::vector<float>& floor)
    : grid_(grid), heights_(grid.points + 2 * grid.margin, nothing) {
  std::copy(floor.begin(), floor.end(), heights_.begin() + static_cast<std::ptrdiff_t>(grid.margin));
}

void HeightField::lay(const CirclePrint& print, double x_mm, double height_mm) {
  // The circle's left edge, in points.
  const double edge = (x_mm - print.half_width_mm()) / grid_.spacing_mm - 0.5 + static_cast<double>(grid_.margin);
  if (edge < 0.0 || edge + 1.0 + static_cast<double>(print.points()) > static_cast<double>(heights_.size())) return;
  const std::size_t before = static_cast<std::size_t>(edge);
  const double to_next = 1.0 - (edge - static_cast<double>(before));
  const auto place = std::min(static_cast<std::size_t>(to_next * CirclePrint::places), CirclePrint::places - 1);
  const float* const shape = print.at(place);
  float* const heights = &heights_[before + 1];
  const float height = static_cast<float>(height_mm);
  for (std::size_t group = 0; group < print.points(); group += 4) {
    float top[4];
    for (std::size_t i = 0; i < 4; ++i) top[i] = height + shape[group + i];
    greater_of(top, heights + group, heights + group, 4);
  }
}

void HeightField::add_crests(std::size_t reach, std::vector<double>& sums, std::vector<float>& scratch) const {
  const std::size_t window = 2 * reach + 1;
  const std::size_t all = grid_.points + 2 * reach;
  scratch.resize(2 * all);
  const float* source = nullptr;
  float* target = scratch.data();
  if (reach <= grid_.margin) {
    source = &heights_[grid_.margin - reach];
  } else {
    const std::size_t beyond = reach - grid_.margin;
    std::fill(scratch.begin(), scratch.begin() + static_cast<std::ptrdiff_t>(all), nothing);
    std::copy(heights_.begin(), heights_.end(), scratch.begin() + static_cast<std::ptrdiff_t>(beyond));
    source = scratch.data();
    target = scratch.data() + all;
  }
  // Greatest over windows that double in width, the last step overlapping, until they are as wide as wanted.
  std::size_t width = 1;
  while (width < window) {
    const std::size_t step = std::min(width, window - width);
    width += step;
    greater_of(source, source + step, target, all + 1 - width);
    source = target;
    target = target == scratch.data() ? scratch.data() + all : scratch.data();
  }
  for (std::size_t i = 0; i < grid_.points; ++i) sums[i] += static_cast<double>(source[i]);
}

}  // namespace laywright
