#include "answers/customer_figures.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "advise/capacity.h"
#include "advise/draws.h"
#include "advise/setting_text.h"

namespace laywright {
namespace {

void widen(Span& span, double value_mm) {
  span.least_mm = std::min(span.least_mm, value_mm);
  span.most_mm = std::max(span.most_mm, value_mm);
}

// Of a wind that takes so much more room on the same barrel.
double diameter_of(double barrel_mm, double diameter_mm, double times) {
  const double barrel = barrel_mm * barrel_mm;
  return std::sqrt(barrel + times * std::max(0.0, diameter_mm * diameter_mm - barrel));
}

// The plan as it is, and what else it may turn out to be.
std::vector<TrialOrder> ends_of(const Plan& plan, const LaySettings& settings) {
  const PlanDraft& draft = plan.draft();
  const double tolerance = draft.fiber.diameter_tolerance_mm;
  std::vector<TrialOrder> orders =
      scatters(draft) || tolerance > 0.0 ? draws_of(draft, settings, 3) : draws_of(draft, settings, 1);
  for (std::size_t i = 1; i < orders.size(); ++i)
    orders[i].draft.fiber.diameter_mm += i == 1 ? -tolerance : tolerance;
  return orders;
}

// Of one of them; none where it is no sound plan, or was cancelled.
std::optional<double> diameter_laid(const TrialOrder& order, Progress& progress) {
  const Result<Plan> plan = check(order.draft);
  if (!plan.ok()) return std::nullopt;
  const Result<Build> build = lay(plan.value(), order.settings, progress);
  if (!build.ok()) return std::nullopt;
  return measure(plan.value(), build.value(), progress).outer_diameter.greatest_mm;
}

}  // namespace

Result<CustomerFigures> customer_figures(const Plan& plan, const Build& build, const Measurements& measurements,
                                         const LaySettings& settings, int threads, const Stretch& stretch) {
  const std::vector<TrialOrder> orders = ends_of(plan, settings);
  std::vector<std::optional<Result<Capacity>>> capacities(orders.size());
  std::vector<std::optional<double>> diameters(orders.size());
  // The long ones first.
  run_parallel(2 * orders.size() - 1, threads, stretch, [&](std::size_t i, Progress& inner) {
    if (i >= orders.size()) {
      const std::size_t at = i - orders.size() + 1;
      diameters[at] = diameter_laid(orders[at], inner);
    } else if (const Result<Plan> sound = i == 0 ? Result<Plan>(plan) : check(orders[i].draft); sound.ok()) {
      capacities[i] = capacity(sound.value(), orders[i].settings, inner);
    }
  });
  if (stretch.progress.cancelled() || !capacities.front()) return stopped();
  if (!capacities.front()->ok()) return capacities.front()->issues();

  CustomerFigures figures;
  figures.wound = laid_figures(build, measurements);
  figures.mass_kg = measurements.fiber_mass_kg;
  figures.tolerance_mm = plan.fiber().diameter_tolerance_mm;
  figures.scatters = scatters(plan.draft());
  figures.model_margin = customer_model_margin;
  const double held = capacities.front()->value().first_touch_mm, thick = figures.wound.diameter_mm;
  figures.capacity = {held, held, held};
  figures.diameter = {thick, thick, thick};
  for (std::size_t i = 1; i < orders.size(); ++i) {
    if (capacities[i] && capacities[i]->ok()) widen(figures.capacity, capacities[i]->value().first_touch_mm);
    if (diameters[i]) widen(figures.diameter, *diameters[i]);
  }
  figures.capacity.least_mm *= 1.0 - customer_model_margin;
  figures.capacity.most_mm *= 1.0 + customer_model_margin;
  const double barrel = plan.spool().least_barrel_diameter_mm();
  figures.diameter.least_mm = diameter_of(barrel, figures.diameter.least_mm, 1.0 - customer_model_margin);
  figures.diameter.most_mm = diameter_of(barrel, figures.diameter.most_mm, 1.0 + customer_model_margin);
  return figures;
}

}  // namespace laywright
