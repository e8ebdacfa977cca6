#include "measure/local_mean.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace laywright {

namespace {

struct Sum {
  double radius = 0.0;
  double least = std::numeric_limits<double>::infinity();
  double greatest = 0.0;
  std::size_t count = 0;

  void add(double r) {
    radius += r;
    least = std::min(least, r);
    greatest = std::max(greatest, r);
    ++count;
  }
  [[nodiscard]] double mean() const { return radius / static_cast<double>(count); }
};

// A zone that the layer does not reach takes the mean of the nearest that it does.
void fill_empty(std::vector<double>& means, const std::vector<Sum>& sums) {
  for (std::size_t i = 0; i < means.size(); ++i) {
    if (sums[i].count > 0) continue;
    for (std::size_t far = 1; far < means.size(); ++far) {
      if (i >= far && sums[i - far].count > 0) {
        means[i] = means[i - far];
        break;
      }
      if (i + far < means.size() && sums[i + far].count > 0) {
        means[i] = means[i + far];
        break;
      }
    }
  }
}

}  // namespace

LocalMean::LocalMean(const StrokeView& view) {
  const NodeStore& nodes = view.build.nodes;
  const double width = view.plan.spool().inside_width_mm;
  const double zone = std::max(0.05 * width, 20.0 * view.diameter());
  const std::size_t zones = std::max<std::size_t>(1, static_cast<std::size_t>(width / zone));
  lean_ = 0.5 * view.plan.spool().barrel_taper_mm / width;
  per_mm_ = static_cast<double>(zones) / width;
  const double last = static_cast<double>(zones) - 1.0;
  const auto zone_of = [&](double x) { return static_cast<std::size_t>(std::clamp(x * per_mm_, 0.0, last)); };

  const double off = 0.5 * view.diameter();
  std::vector<Sum> all(zones);
  for (std::size_t k = view.first; k < view.end; ++k) {
    const double x = nodes.x(k);
    all[zone_of(x)].add(nodes.r(k) - lean_ * x);
  }
  means_.resize(zones);
  for (std::size_t i = 0; i < zones; ++i) {
    if (all[i].count == 0) continue;
    means_[i] = all[i].mean();
    any_off_ = any_off_ || all[i].greatest - means_[i] > off || means_[i] - all[i].least > off;
  }
  if (any_off_) {
    std::vector<Sum> near(zones);
    for (std::size_t k = view.first; k < view.end; ++k) {
      const double x = nodes.x(k);
      const double r = nodes.r(k) - lean_ * x;
      const std::size_t i = zone_of(x);
      if (std::abs(r - means_[i]) <= off) near[i].add(r);
    }
    for (std::size_t i = 0; i < zones; ++i) {
      if (near[i].count > 0) means_[i] = near[i].mean();
    }
  }
  fill_empty(means_, all);
  // A single zone is level.
  if (zones == 1) means_.push_back(means_.front());
}

}  // namespace laywright
