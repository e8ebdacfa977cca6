#include "advise/carry_over.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "plan/plan_values.h"

namespace laywright {
namespace {

// To whole steps, which are powers of ten, without a tail of further digits.
double rounded_to(double value, double step) {
  if (step >= 1.0) return std::round(value / step) * step;
  const double parts = std::round(1.0 / step);
  return std::round(value * parts) / parts;
}

}  // namespace

std::vector<CarriedSetting> carry_over(const Plan& wound, const Fit& fit, PlanDraft& next) {
  std::vector<CarriedSetting> carried;
  for (const Correction& correction : fit.corrections) {
    const auto fitted = std::find_if(fit.fitted.begin(), fit.fitted.end(),
                                     [&](const Fitted& each) { return each.unknown.path == correction.path; });
    if (fitted == fit.fitted.end()) continue;
    const bool turns = correction.path == "traverse.reversal.turns";
    if (turns && next.traverse.reversal.kind != wound.traverse().reversal.kind) continue;
    const double planned = fitted->unknown.believed;
    const auto carry = [&](const std::string& path) {
      const std::optional<double> before = value_at(next, path);
      if (!before) return;
      const double to = correction.path == "traverse.pitch" ? *before * correction.set_to / planned
                                                            : *before + correction.set_to - planned;
      double after = rounded_to(to, step_told(*fitted));
      if (turns) after = std::max(0.0, after);
      if (after == *before) return;
      set_value(next, path, after);
      carried.push_back({path, *before, after});
    };
    carry(correction.path);
    const std::string key = correction.path.substr(correction.path.rfind('.') + 1);
    for (std::size_t i = 0; i < next.wind.steps.size() && !turns; ++i)
      carry(fmt::format("wind.step[{}].{}", i, key));
  }
  return carried;
}

}  // namespace laywright
