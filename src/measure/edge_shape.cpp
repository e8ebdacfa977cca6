#include "measure/edge_shape.h"

#include <algorithm>

#include "measure/surface.h"

namespace laywright {

EdgeSampler::EdgeSampler(const Plan& plan, const SurfaceGrid& grid) {
  constexpr std::size_t fewest = 4;  // in an edge zone
  const double edge = zones_of(plan)[static_cast<std::size_t>(Zone::left)].to_mm;
  const auto points_to = [&](double x) { return static_cast<std::size_t>(x / grid.spacing_mm + 0.5); };
  const std::size_t edge_end = points_to(edge);
  const std::size_t level_end = std::min(points_to(4.0 * edge), grid.points / 2);
  const std::size_t step =
      std::max<std::size_t>(1, std::min(points_to(0.5 * plan.fiber().diameter_mm), edge_end / fewest));
  for (std::size_t point = 0; point < level_end; point += step) {
    points_.push_back(point);
    at_edge_ += point < edge_end ? 1 : 0;
  }
  of_a_side_ = points_.size();
  for (std::size_t i = 0; i < of_a_side_; ++i) points_.push_back(grid.points - 1 - points_[i]);
}

EdgeShape EdgeSampler::shape(const double* crests) const {
  const auto [least, greatest] = std::minmax_element(crests, crests + at_edge_);
  std::vector<double> beside(crests + at_edge_, crests + of_a_side_);
  const auto middle = beside.begin() + static_cast<std::ptrdiff_t>(beside.size() / 2);
  std::nth_element(beside.begin(), middle, beside.end());
  return {std::max(0.0, *greatest - *middle), std::max(0.0, *middle - *least)};
}

EdgeShapes EdgeSampler::shapes(const double* crests) const { return {shape(crests), shape(crests + of_a_side_)}; }

}  // namespace laywright
