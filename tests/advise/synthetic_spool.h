// Spools that were never wound: a plan with hidden settings is laid, read off with noise, and fitted.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "advise/fit.h"
#include "base/random.h"
#include "narrow_plan.h"

namespace laywright::testing {

// One sigma.
struct SpoolNoise {
  double turns = 0.0;  // at each reversal
  double diameter_mm = 0.0;
  double turns_share = 0.0;  // turns, as a share of a layer's
};

// One percent of the turns of a layer, and of the build-up of five layers (rises of .85 d).
inline SpoolNoise one_percent(const PlanDraft& plan) {
  const double stroke = plan.spool.inside_width_mm - plan.traverse.left_stop_mm - plan.traverse.right_stop_mm;
  return {0.01 * stroke / plan.traverse.pitch_mm, 0.01 * 2.0 * (1.0 + 4.0 * 0.85) * plan.fiber.diameter_mm, 0.01};
}

// Turns counted at each reversal, and three diameters there, off the measurements of a build at full fidelity.
inline AsWound synthetic_spool(PlanDraft hidden, int layers, const SpoolNoise& noise, std::uint64_t seed) {
  const double stroke = hidden.spool.inside_width_mm - hidden.traverse.left_stop_mm - hidden.traverse.right_stop_mm;
  hidden.wind = {};
  hidden.wind.turns =
      (layers + 0.5) * ((stroke + hidden.traverse.reversal.lost_motion_mm) / hidden.traverse.pitch_mm +
                        hidden.traverse.reversal.turns);
  const Wound wind = wound(hidden);
  Random random(seed);
  AsWound spool;
  spool.file = "synthetic";
  double turns = 0.0;
  for (int layer = 1; layer <= layers; ++layer) {
    const LayerRow& row = wind.measurements.layers[static_cast<std::size_t>(layer) - 1];
    turns += row.turns;
    Reading reading;
    reading.layer = layer;
    reading.counter_turns = turns + noise.turns * random.normal();
    for (std::size_t zone = 0; zone < 3; ++zone) {
      reading.diameter_mm[zone] = row.outer_diameter_mm[zone] + noise.diameter_mm * random.normal();
    }
    spool.readings.push_back(reading);
  }
  return spool;
}

// Told the noise as it is.
inline FitSettings believing(const SpoolNoise& noise, std::vector<std::pair<std::string, double>> beliefs) {
  FitSettings settings;
  settings.threads = 2;
  settings.errors.turns_share = noise.turns_share;
  settings.errors.diameter_mm = noise.diameter_mm;
  settings.beliefs = std::move(beliefs);
  return settings;
}

struct Coverage {
  int intervals = 0, held = 0;
  std::vector<double> pitch_errors, diameter_errors;  // relative, of each spool
};

// Over spools whose hidden settings scatter as is believed of them.
inline Coverage coverage_of(const PlanDraft& plan, const SpoolNoise& noise, FitSettings settings, int spools) {
  settings.lay.fidelity = 0.5;
  Coverage coverage;
  Random random(2024);
  for (int i = 0; i < spools; ++i) {
    const std::vector<Unknown> unknowns = unknowns_of(checked(plan), settings);
    std::vector<double> values;
    for (const Unknown& unknown : unknowns) {
      values.push_back(std::max(unknown.least, unknown.believed + unknown.belief * random.normal()));
    }
    const Plan believed = checked(plan);
    const AsWound none;
    const PlanDraft hidden = FitModel(believed, none, unknowns, settings.lay).draft_at(values);
    const AsWound spool = synthetic_spool(hidden, 5, noise, 100 + static_cast<std::uint64_t>(i));
    Progress progress;
    const Result<Fit> found = fit(believed, spool, settings, progress);
    if (!found.ok()) throw std::logic_error(to_text(found.issues().front()));
    for (std::size_t k = 0; k < unknowns.size(); ++k) {
      const Fitted& each = found.value().fitted[k];
      ++coverage.intervals;
      if (values[k] >= each.low && values[k] <= each.high) ++coverage.held;
      const double error = std::abs(each.value / values[k] - 1.0);
      if (each.unknown.path == "traverse.pitch") coverage.pitch_errors.push_back(error);
      if (each.unknown.path == "fiber.diameter") coverage.diameter_errors.push_back(error);
    }
  }
  return coverage;
}

}  // namespace laywright::testing
