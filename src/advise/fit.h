// Why a real spool differs from its plan: the settings that it was most likely wound with, fitted to what was measured
// on it, each with an interval; and what to set next time.
//
// Gauss and Newton with the lay model as the function, and slopes that are planes through many winds around the place
// (response.h), since a single wind is rough: residuals of the readings in their sigmas, and of each unknown against what
// is believed of it in its sigma. Winds of nearly the same settings scatter a little; that scatter, about the planes,
// counts beside the error of a reading. Intervals come from the covariance at the solution, widened where the readings
// are missed by more than they should. What they cannot tell apart is found as the directions in which they say less than
// what was believed before.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advise/fit_model.h"
#include "base/result.h"

namespace laywright {

struct FitSettings {
  LaySettings lay;
  int threads = threads_at_hand();
  ReadingErrors errors;
  // Sigma by key path, where it is not the default; 0 leaves a setting out, as it is.
  std::vector<std::pair<std::string, double>> beliefs;
};

struct Fitted {
  Unknown unknown;
  double value = 0.0;
  double sigma = 0.0;
  double low = 0.0, high = 0.0;  // 95 %
  bool told_by_readings = true;  // they say more than was believed before
};

// To what such a value is worth telling, and setting: the power of ten at or below half of its sigma.
[[nodiscard]] double step_told(const Fitted& fitted);

struct Residual {
  Observation observation;
  double model = 0.0;
};

struct Correction {
  std::string path;
  double set_to = 0.0;
};

struct Fit {
  std::vector<Fitted> fitted;
  std::vector<Residual> residuals;
  double misfit = 0.0;  // root mean square residual of the readings, in sigmas; about 1 where all is as believed
  // Groups of unknowns that the readings cannot tell apart, none within another; one alone: they say nothing of it.
  std::vector<std::vector<std::string>> not_told_apart;
  std::vector<Correction> corrections;  // for the next spool; where the fit differs from the plan beyond chance
  int trials = 0;
  std::string text;
};

// Pitch, fiber diameter, both stops, how long the guide stands at a reversal and the friction, as the plan has them, with default
// beliefs: 1 %, the plan's tolerance or 2 %, a quarter of the fiber's diameter, a quarter turn, 0.1. It stands for a dwell or
// for lost motion, which look alike: what is unknown is the dwell, but with a ramp, which has none, the lost motion, a quarter
// of a pitch. Without a ramp that is taken as planned unless settings.beliefs name it.
[[nodiscard]] std::vector<Unknown> unknowns_of(const Plan& plan, const FitSettings& settings);

// That a table has turns, lengths and diameters only where nothing says what they are to be compared with.
[[nodiscard]] Issue nothing_to_compare(const AsWound& wound);

// Errors: too few readings, a plan that cannot be laid, cancelled (text `stopped_text`).
[[nodiscard]] Result<Fit> fit(const Plan& plan, const AsWound& wound, const FitSettings& settings,
                              const Stretch& stretch);

}  // namespace laywright
