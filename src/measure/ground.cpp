#include "measure/ground.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace laywright {

Ground::Ground(const Spool& spool, double theta)
    : width_(spool.inside_width_mm),
      left_(0.5 * spool.barrel_diameter_mm),
      right_(0.5 * (spool.barrel_diameter_mm + spool.barrel_taper_mm)),
      opening_(std::tan(spool.flange_taper_rad)),
      lean_(spool.flange_runout_mm / spool.flange_diameter_mm * std::cos(theta)) {}

// The face lies at x = lean r - opening (r - barrel), seen from its own end.
double Ground::on_face(double x, double barrel_mm) const {
  if (x >= lean_ * barrel_mm) return 0.0;
  const double per_radius = opening_ - lean_;
  return per_radius > 0.0 ? (opening_ * barrel_mm - x) / per_radius : std::numeric_limits<double>::infinity();
}

double Ground::radius_mm(double x) const {
  const double barrel = left_ + (right_ - left_) * x / width_;
  return std::max({barrel, on_face(x, left_), on_face(width_ - x, right_)});
}

double section_moment(const Ground& ground, const HeightField& field, double base_mm) {
  const SurfaceGrid& grid = field.grid();
  double sum = 0.0;
  for (std::size_t i = 0; i < grid.points + 2 * grid.beyond; ++i) {
    const double x = (static_cast<double>(i) - static_cast<double>(grid.beyond) + 0.5) * grid.spacing_mm;
    const double low = ground.radius_mm(x);
    const double high = base_mm + static_cast<double>(field.with_openings(i));
    if (high > low) sum += (high - low) * (high + low);
  }
  return sum * grid.spacing_mm;
}

}  // namespace laywright
