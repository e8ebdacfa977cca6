#include "follow/likely.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include <boost/math/distributions/chi_squared.hpp>

namespace laywright {
namespace {

FitSettings wide_settings(const Plan& plan, const LaySettings& lay, const ReadingErrors& errors, int threads) {
  const double d = plan.fiber().diameter_mm, pitch = plan.traverse().pitch_mm;
  const bool dwells = plan.traverse().reversal.kind == ReversalKind::dwell;
  FitSettings fit;
  fit.lay = lay;
  fit.threads = threads;
  fit.errors = errors;
  fit.beliefs = {{"traverse.pitch", 0.03 * pitch},
                 {"traverse.left_stop", d},
                 {"traverse.right_stop", d},
                 {"traverse.reversal.turns", dwells ? 1.0 : 0.0},
                 {"traverse.reversal.lost_motion", dwells ? 0.0 : pitch},
                 {"fiber.friction", 0.0}};
  return fit;
}

FitSettings alone(FitSettings settings, const std::vector<Unknown>& unknowns, const std::string& path) {
  for (const Unknown& each : unknowns) {
    if (each.path != path) settings.beliefs.insert(settings.beliefs.begin(), {each.path, 0.0});
  }
  return settings;
}

// Squares of all that is missed, in sigmas: the readings and what was believed.
double missed(const Fit& fit) {
  double sum = fit.misfit * fit.misfit * static_cast<double>(fit.residuals.size());
  for (const Fitted& each : fit.fitted) {
    const double off = (each.value - each.unknown.believed) / each.unknown.belief;
    sum += off * off;
  }
  return sum;
}

// One of 200 true explanations would miss by more.
bool explains(const Fit& fit) {
  constexpr double most = 0.995;
  const auto readings = static_cast<double>(fit.residuals.size());
  return missed(fit) <= boost::math::quantile(boost::math::chi_squared(readings), most);
}

}  // namespace

Result<Likely> likely_off(const Plan& plan, const AsWound& wound, const LaySettings& lay,
                          const ReadingErrors& errors, int threads, const Stretch& stretch) {
  const FitSettings settings = wide_settings(plan, lay, errors, threads);
  const std::vector<Unknown> unknowns = unknowns_of(plan, settings);
  const double part = (stretch.to - stretch.from) / static_cast<double>(unknowns.size() + 2);
  double from = stretch.from;
  std::vector<Fit> explaining;
  for (const Unknown& each : unknowns) {
    Result<Fit> one = fit(plan, wound, alone(settings, unknowns, each.path), {stretch.progress, from, from + part});
    if (stretch.progress.cancelled()) return one.issues();
    from += part;
    // What cannot be laid explains nothing.
    if (one.ok() && explains(one.value())) explaining.push_back(std::move(one).value());
  }
  if (explaining.empty()) {
    Result<Fit> all = fit(plan, wound, settings, {stretch.progress, from, stretch.to});
    if (!all.ok()) return all.issues();
    return Likely{std::move(all).value(), {}};
  }
  std::sort(explaining.begin(), explaining.end(), [](const Fit& a, const Fit& b) { return missed(a) < missed(b); });
  // Likelihoods within e^3, about twenty, of one another.
  constexpr double no_worse = 6.0;
  const double least = missed(explaining.front());
  std::erase_if(explaining, [&](const Fit& each) { return missed(each) > least + no_worse; });
  Likely likely{std::move(explaining.front()), {}};
  explaining.erase(explaining.begin());
  likely.as_likely = std::move(explaining);
  return likely;
}

}  // namespace laywright
