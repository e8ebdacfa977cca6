// Ridge and valley beside a flange: how far the highest and the lowest place of an edge zone lie from the level beside it.
//
// Taken on crests (surface.h) that are averaged over the angle, so that one turn that stands high at one angle makes no
// ridge, with the barrel's own taper taken off. The ridge is the greatest of them within the edge zone less the level; the
// valley is the level less the least of them; 0 where nothing stands above, or lies below. The level is the median over
// the part of the width from the edge zone to four times as far from the flange: with an edge of 5 %, from 5 to 20 %.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "measure/height_field.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// Keeps of a stroke's crests those that count here: one per half diameter of the edges and of the levels beside them.
class EdgeSampler {
 public:
  EdgeSampler(const Plan& plan, const SurfaceGrid& grid);

  // Of the grid: where crests are wanted, the left edge's first, each side's from its flange inward.
  [[nodiscard]] const std::vector<std::size_t>& points() const { return points_; }

  // `crests`: mean heights over the barrel at points(), mm.
  [[nodiscard]] EdgeShapes shapes(const double* crests) const;

 private:
  [[nodiscard]] EdgeShape shape(const double* crests) const;

  std::vector<std::size_t> points_;
  std::size_t at_edge_ = 0, of_a_side_ = 0;  // of a side's points, those of the edge zone, and all
};

}  // namespace laywright
