// A fit to a real spool, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "advise/carry_over.h"
#include "advise/fit.h"

namespace laywright {

[[nodiscard]] std::string fit_text(const Plan& plan, const AsWound& wound, const Fit& fit);

// A line of its table of settings.
struct FittedLine {
  std::string setting, planned, wound, between, from;
  bool told_by_readings = true;
};
[[nodiscard]] std::vector<FittedLine> fitted_lines(const Plan& plan, const Fit& fit);

// "traverse.right_stop = 0.35 mm", what to set next time; empty: leave the settings as they are.
[[nodiscard]] std::vector<std::string> correction_lines(const Plan& plan, const Fit& fit);

// How well the settings found explain the readings, as a sentence.
[[nodiscard]] std::string misfit_words(const Fit& fit);

// "traverse.right_stop = 0.35 mm, before 0.1 mm", of a plan that it was carried into.
[[nodiscard]] std::string carried_words(const PlanDraft& next, const CarriedSetting& carried);
inline constexpr const char* nothing_to_carry = "the fit says nothing that this plan should set otherwise";

// One document, format "lay-fit 1".
[[nodiscard]] std::string fit_json(const Plan& plan, const AsWound& wound, const Fit& fit);

}  // namespace laywright
