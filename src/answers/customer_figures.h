// What a customer is told of a spool, in figures: how much it holds, how thick it is, and between what that lies.
#pragma once

#include "base/result.h"
#include "figures/customer_words.h"
#include "jobs/parallel.h"
#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// Share of a length by which the model may be off where all that it is given is right. No wound spool measured by others has
// been compared, so this is an honest estimate without a source: what a crossed wind fills less when it is laid with twice the
// stations (tests/results.md), and more than the 0.9 % of others.
inline constexpr double customer_model_margin = 0.03;

// Capacity by capacity(), diameter and clearance of the wind as it lies. Where the plan states a tolerance of the fiber's
// diameter, the spool is filled and the wind is laid with its ends, too, and where it states scatter, with two further draws;
// then all is widened by the model's margin. Precondition: build and measurements are of the plan, laid with the settings.
// Errors: as capacity().
[[nodiscard]] Result<CustomerFigures> customer_figures(const Plan& plan, const Build& build,
                                                       const Measurements& measurements, const LaySettings& settings,
                                                       int threads, const Stretch& stretch);

}  // namespace laywright
