#include "photo/zone_diameters.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace laywright {
namespace {

// The highest within the reach of a jaw.
std::vector<double> crests_of(const EdgeProfile& profile, double reach_mm) {
  const std::vector<double>& x = profile.x_mm;
  std::vector<double> crests;
  std::size_t from = 0, to = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    while (x[from] < x[i] - reach_mm) ++from;
    while (to < x.size() && x[to] <= x[i] + reach_mm) ++to;
    const auto at = profile.diameter_mm.begin();
    crests.push_back(
        *std::max_element(at + static_cast<std::ptrdiff_t>(from), at + static_cast<std::ptrdiff_t>(to)));
  }
  return crests;
}

std::optional<ZoneDiameter> diameter_in(const EdgeProfile& profile, const std::vector<double>& diameters,
                                        const Extent& zone) {
  const double spacing = (profile.x_mm.back() - profile.x_mm.front()) / static_cast<double>(profile.x_mm.size() - 1);
  double count = 0.0, sum = 0.0, noise = 0.0, shared = 0.0;
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
    if (profile.x_mm[i] < zone.from_mm || profile.x_mm[i] > zone.to_mm) continue;
    count += 1.0;
    sum += diameters[i], noise += profile.noise_mm[i], shared += profile.shared_mm[i];
  }
  ZoneDiameter found;
  found.seen_share = std::min(1.0, count * spacing / (zone.to_mm - zone.from_mm));
  if (found.seen_share < least_seen_share) return std::nullopt;
  found.diameter_mm = sum / count;
  // Columns nearer than the blur have their noise in common.
  const double apart = std::max(1.0, count / profile.found.edge_width_px);
  found.sigma_mm = std::hypot(noise / count / std::sqrt(apart), shared / count);
  return found;
}

}  // namespace

bool shows_turns(const EdgeProfile& profile, const Plan& plan) {
  return plan.fiber().diameter_mm * profile.found.px_per_mm >= 1.5 * profile.found.edge_width_px;
}

std::array<std::optional<ZoneDiameter>, zone_count> zone_diameters(const EdgeProfile& profile, const Plan& plan) {
  // A diameter to either side, or half a pitch where that is more (surface.h).
  const double reach = std::max(plan.fiber().diameter_mm, 0.5 * widest_pitch_mm(plan, 1));
  const std::vector<double> diameters = shows_turns(profile, plan) ? crests_of(profile, reach) : profile.diameter_mm;
  const auto zones = zones_of(plan);
  std::array<std::optional<ZoneDiameter>, zone_count> found;
  for (std::size_t zone = 0; zone < zone_count; ++zone) found[zone] = diameter_in(profile, diameters, zones[zone]);
  return found;
}

}  // namespace laywright
