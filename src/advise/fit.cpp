#include "advise/fit.h"

#include <algorithm>
#include <cmath>

#include "advise/fit_search.h"
#include "advise/fit_untold.h"
#include "advise/fit_words.h"
#include "advise/setting_text.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

using Eigen::Index;

constexpr double z95 = 1.959964;  // of the normal distribution, 95 % within

// Settings that make the next spool what the plan wanted: the pitch in the same proportion to the fiber as it is, stops
// as far from the flange; each as much off the other way as it was found off.
std::vector<Correction> corrections_of(const Plan& plan, const std::vector<Fitted>& fitted) {
  double thicker = 1.0;
  for (const Fitted& each : fitted) {
    if (each.unknown.path == "fiber.diameter" && each.told_by_readings) thicker = each.value / each.unknown.believed;
  }
  std::vector<Correction> corrections;
  const auto set = [&](const Fitted& each, double to) {
    const double step = step_told(each);
    corrections.push_back({each.unknown.path, std::round(to / step) * step});
  };
  for (const Fitted& each : fitted) {
    const double now = each.unknown.believed;
    const bool off = (now < each.low || now > each.high) && each.told_by_readings;
    if (each.unknown.path == "traverse.pitch" && (off || std::abs(thicker - 1.0) > 0.005)) {
      const double true_to_set = off ? each.value / now : 1.0;
      set(each, now * thicker / true_to_set);
    }
    const bool stop = each.unknown.path == "traverse.left_stop" || each.unknown.path == "traverse.right_stop";
    if (stop && off) {
      const double more_room = 0.5 * (thicker - 1.0) * plan.fiber().diameter_mm;
      set(each, now + more_room - (each.value - now));
    }
    if (each.unknown.path == "traverse.reversal.turns" && off) {
      const double less = now - (each.value - now);
      if (less >= 0.0 && now > 0.0) set(each, less);
    }
  }
  return corrections;
}

double belief_in(const FitSettings& settings, const std::string& path, double standard) {
  for (const auto& [key, sigma] : settings.beliefs) {
    if (key == path) return sigma;
  }
  return standard;
}

void fill(const FitSolution& solution, const FitProblem& problem, const std::vector<Unknown>& unknowns,
          const std::vector<Observation>& observations, Fit& fit) {
  const auto readings = static_cast<double>(observations.size());
  fit.misfit = std::sqrt(solution.white_residuals.squaredNorm() / readings);
  // Readings that scatter more than they should make all intervals wider.
  const double wider = std::max(1.0, fit.misfit);
  const std::vector<double> values = problem.values_at(solution.x);
  constexpr double hardly_better = 0.8;  // of the sigma that was believed
  for (std::size_t i = 0; i < unknowns.size(); ++i) {
    const Unknown& unknown = unknowns[i];
    const auto at = static_cast<Index>(i);
    const double in_beliefs = std::sqrt(solution.covariance(at, at));
    Fitted fitted{unknown,
                  std::clamp(values[i], unknown.least, unknown.most),
                  wider * in_beliefs * unknown.belief,
                  0.0,
                  0.0,
                  in_beliefs < hardly_better};
    fitted.low = std::max(unknown.least, fitted.value - z95 * fitted.sigma);
    fitted.high = std::min(unknown.most, fitted.value + z95 * fitted.sigma);
    fit.fitted.push_back(std::move(fitted));
  }
  for (std::size_t i = 0; i < observations.size(); ++i) {
    Observation each = observations[i];
    each.sigma = solution.sigmas[static_cast<Index>(i)];
    fit.residuals.push_back({each, solution.model[static_cast<Index>(i)]});
  }
  fit.not_told_apart = untold(solution.white_slope, unknowns);
}

}  // namespace

std::vector<Unknown> unknowns_of(const Plan& plan, const FitSettings& settings) {
  const PlanDraft& draft = plan.draft();
  const double d = draft.fiber.diameter_mm, pitch = draft.traverse.pitch_mm;
  constexpr double no_limit = 1e9;
  std::vector<Unknown> all;
  const auto add = [&](const char* path, const char* words, double standard, double least, double most) {
    const double belief = belief_in(settings, path, standard);
    if (belief > 0.0) all.push_back({path, words, *value_at(draft, path), belief, least, most});
  };
  const double tolerance = draft.fiber.diameter_tolerance_mm;
  add("traverse.pitch", "pitch", 0.01 * pitch, 0.2 * pitch, 5.0 * pitch);
  add("fiber.diameter", "fiber diameter", tolerance > 0.0 ? tolerance : 0.02 * d, 0.5 * d, 2.0 * d);
  add("traverse.left_stop", "left stop", 0.25 * d, -no_limit, no_limit);
  add("traverse.right_stop", "right stop", 0.25 * d, -no_limit, no_limit);
  if (draft.traverse.reversal.kind != ReversalKind::ramp) {
    add("traverse.reversal.turns", "dwell", 0.25, 0.0, no_limit);
  }
  const bool ramps = draft.traverse.reversal.kind == ReversalKind::ramp;
  add("traverse.reversal.lost_motion", "lost motion", ramps ? 0.25 * pitch : 0.0, 0.0, no_limit);
  if (std::isfinite(draft.fiber.friction)) add("fiber.friction", "friction", 0.1, 0.0, 3.0);
  return all;
}

double step_told(const Fitted& fitted) {
  constexpr double sigmas = 0.5;
  return fitted.sigma > 0.0 ? std::pow(10.0, std::floor(std::log10(sigmas * fitted.sigma))) : 1e-9;
}

Issue nothing_to_compare(const AsWound& wound) {
  Issue none = option_issue("", "", "has no reading to compare: give turns of layers, widths or diameters");
  none.file = wound.file;
  return none;
}

Result<Fit> fit(const Plan& plan, const AsWound& wound, const FitSettings& settings, const Stretch& stretch) {
  const std::vector<Unknown> unknowns = unknowns_of(plan, settings);
  const std::vector<Observation> observations = observations_of(plan, wound, settings.errors);
  if (observations.empty()) return nothing_to_compare(wound);
  if (unknowns.empty()) return option_issue("", "", "nothing is unknown, so there is nothing to fit");
  const FitModel model(plan, wound, unknowns, settings.lay);
  FitProblem problem(model, unknowns, settings, stretch);
  const std::optional<FitSolution> solution = search_fit(problem, observations, static_cast<Index>(unknowns.size()));
  if (stretch.progress.cancelled()) return stopped();
  if (!solution) return option_issue("", "", "could not be laid with settings near those of the plan");
  Fit result;
  fill(*solution, problem, unknowns, observations, result);
  result.corrections = corrections_of(plan, result.fitted);
  result.trials = problem.trials();
  result.text = conclusion_of(plan, result);
  return result;
}

}  // namespace laywright
