#include "advise/fit.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

#include "advise/fit_words.h"
#include "advise/lattice.h"
#include "advise/response.h"
#include "advise/setting_text.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double z95 = 1.959964;  // of the normal distribution, 95 % within

// The readings as planes over the unknowns, which are counted in what is believed of them. A wind is too rough for
// derivatives at a point: a diameter jumps by a tenth of a fiber where a turn begins to climb.
class Problem {
 public:
  Problem(const FitModel& model, const std::vector<Unknown>& unknowns, const FitSettings& settings,
          Progress& progress)
      : model_(model), unknowns_(unknowns), settings_(settings), progress_(progress) {}

  [[nodiscard]] std::vector<double> values_at(const VectorXd& x) const {
    std::vector<double> values;
    for (std::size_t i = 0; i < unknowns_.size(); ++i) {
      values.push_back(unknowns_[i].believed + unknowns_[i].belief * x[static_cast<Index>(i)]);
    }
    return values;
  }

  // Points evenly in a box around x; `end`: of the way of the progress. None when too few can be laid.
  std::optional<Response> response_around(const VectorXd& x, const VectorXd& half_widths, double end) {
    const auto unknowns = static_cast<std::size_t>(x.size());
    const std::size_t count = 16 * (unknowns + 1);
    std::vector<VectorXd> points;
    std::vector<std::vector<double>> values;
    for (const std::vector<double>& unit : lattice(count, unknowns, settings_.lay.seed + points_.size())) {
      VectorXd point = x;
      for (std::size_t i = 0; i < unknowns; ++i) {
        const auto at = static_cast<Index>(i);
        // What lies beyond a limit is laid at the limit.
        const Unknown& unknown = unknowns_[i];
        point[at] = std::clamp(point[at] + half_widths[at] * (2.0 * unit[i] - 1.0),
                               (unknown.least - unknown.believed) / unknown.belief,
                               (unknown.most - unknown.believed) / unknown.belief);
      }
      values.push_back(values_at(point));
      points.push_back(std::move(point));
    }
    const auto read = model_.predict(values, settings_.threads, {progress_, progress_.share(), end});
    trials_ += static_cast<int>(count);
    for (std::size_t p = 0; p < count; ++p) {
      if (!read[p]) continue;
      points_.push_back(points[p]);
      readings_.push_back(Eigen::Map<const VectorXd>(read[p]->data(), static_cast<Index>(read[p]->size())));
    }
    if (progress_.cancelled()) return std::nullopt;
    return response_within(x, half_widths, count / 2);
  }

  [[nodiscard]] int trials() const { return trials_; }

 private:
  // Of all that was laid so far, in this box or an earlier one.
  [[nodiscard]] std::optional<Response> response_within(const VectorXd& x, const VectorXd& half_widths,
                                                        std::size_t least_points) const {
    std::vector<VectorXd> points, readings;
    for (std::size_t p = 0; p < points_.size(); ++p) {
      if (((points_[p] - x).cwiseAbs() - half_widths).maxCoeff() > 1e-9) continue;
      points.push_back(points_[p]);
      readings.push_back(readings_[p]);
    }
    if (points.size() < least_points) return std::nullopt;
    return response_of(points, readings, x);
  }

  const FitModel& model_;
  const std::vector<Unknown>& unknowns_;
  const FitSettings& settings_;
  Progress& progress_;
  std::vector<VectorXd> points_, readings_;  // that were laid
  int trials_ = 0;
};

// The most likely unknowns on a response, with beliefs as further readings of 0 with sigma 1.
struct Solution {
  VectorXd x;
  MatrixXd covariance;
  VectorXd model, sigmas;  // readings, and how exact they are with the scatter of a wind
  // Readings made independent, each of sigma 1: slopes, and model less measured.
  MatrixXd white_slope;
  VectorXd white_residuals;
};

Solution solve(const Response& response, const std::vector<Observation>& observations) {
  const auto count = static_cast<Index>(observations.size());
  VectorXd measured(count);
  MatrixXd errors = response.scatter;
  for (Index i = 0; i < count; ++i) {
    const Observation& each = observations[static_cast<std::size_t>(i)];
    measured[i] = each.measured;
    errors(i, i) += each.sigma * each.sigma;
  }
  Solution s;
  s.sigmas = errors.diagonal().cwiseSqrt();
  const Eigen::LLT<MatrixXd> white(errors);
  s.white_slope = white.matrixL().solve(response.slope);
  const Index unknowns = response.centre.size();
  const MatrixXd normal = s.white_slope.transpose() * s.white_slope + MatrixXd::Identity(unknowns, unknowns);
  const VectorXd off = white.matrixL().solve(measured - response.at(VectorXd::Zero(unknowns)));
  const Eigen::LDLT<MatrixXd> solver(normal);
  s.x = solver.solve(s.white_slope.transpose() * off);
  s.covariance = solver.solve(MatrixXd::Identity(unknowns, unknowns));
  s.model = response.at(s.x);
  s.white_residuals = white.matrixL().solve(s.model - measured);
  return s;
}

// Ever closer around the solution, until it stays.
std::optional<Solution> search(Problem& problem, const std::vector<Observation>& observations, Index unknowns,
                               Progress& progress) {
  constexpr int most_passes = 5;
  constexpr double first_half_width = 1.5, least_half_width = 1.0, sigmas_wide = 2.0, stays = 0.3;
  VectorXd x = VectorXd::Zero(unknowns), half_widths = VectorXd::Constant(unknowns, first_half_width);
  std::optional<Solution> solution;
  for (int pass = 0; pass < most_passes; ++pass) {
    const std::optional<Response> response =
        problem.response_around(x, half_widths, static_cast<double>(pass + 1) / most_passes);
    if (!response || progress.cancelled()) return std::nullopt;
    solution = solve(*response, observations);
    const VectorXd sigmas = solution->covariance.diagonal().cwiseSqrt();
    const bool there = pass > 0 && ((solution->x - x).cwiseQuotient(sigmas)).cwiseAbs().maxCoeff() < stays;
    if (there) break;
    // A plane holds only near where it was found.
    x += (solution->x - x).cwiseMax(-2.0 * half_widths).cwiseMin(2.0 * half_widths);
    half_widths = (sigmas_wide * sigmas).cwiseMax(least_half_width).cwiseMin(first_half_width);
  }
  return solution;
}

using Group = std::vector<std::string>;

bool holds(const Group& group, const std::string& name) {
  return std::find(group.begin(), group.end(), name) != group.end();
}

bool holds_all(const Group& group, const Group& other) {
  return std::all_of(other.begin(), other.end(), [&](const std::string& each) { return holds(group, each); });
}

// Said once: what the readings say nothing of alone, and of the others each group that is no part of another.
std::vector<Group> said_once(const std::vector<Group>& groups) {
  Group alone;
  for (const Group& group : groups) {
    if (group.size() == 1 && !holds(alone, group.front())) alone.push_back(group.front());
  }
  std::vector<Group> together;
  for (Group group : groups) {
    std::erase_if(group, [&](const std::string& each) { return holds(alone, each); });
    const bool known =
        std::any_of(together.begin(), together.end(), [&](const Group& other) { return holds_all(other, group); });
    if (group.size() < 2 || known) continue;
    std::erase_if(together, [&](const Group& other) { return holds_all(group, other); });
    together.push_back(std::move(group));
  }
  std::vector<Group> all;
  for (std::string& each : alone) all.push_back({std::move(each)});
  all.insert(all.end(), together.begin(), together.end());
  return all;
}

// Directions in which the readings say less than what was believed: of the unknowns that make up most of each.
std::vector<Group> untold(const MatrixXd& readings, const std::vector<Unknown>& unknowns) {
  constexpr double notable = 0.35;
  const Eigen::SelfAdjointEigenSolver<MatrixXd> solver(readings.transpose() * readings);
  std::vector<Group> groups;
  for (Index k = 0; k < solver.eigenvalues().size(); ++k) {
    if (solver.eigenvalues()[k] >= 1.0) continue;
    Group group;
    for (Index i = 0; i < solver.eigenvectors().rows(); ++i) {
      if (std::abs(solver.eigenvectors()(i, k)) >= notable)
        group.push_back(unknowns[static_cast<std::size_t>(i)].words);
    }
    groups.push_back(std::move(group));
  }
  return said_once(groups);
}

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

void fill(const Solution& solution, const Problem& problem, const std::vector<Unknown>& unknowns,
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
  if (std::isfinite(draft.fiber.friction)) add("fiber.friction", "friction", 0.1, 0.0, 3.0);
  return all;
}

double step_told(const Fitted& fitted) {
  constexpr double sigmas = 0.5;
  return fitted.sigma > 0.0 ? std::pow(10.0, std::floor(std::log10(sigmas * fitted.sigma))) : 1e-9;
}

Result<Fit> fit(const Plan& plan, const AsWound& wound, const FitSettings& settings, Progress& progress) {
  const std::vector<Unknown> unknowns = unknowns_of(plan, settings);
  const std::vector<Observation> observations = observations_of(plan, wound, settings.errors);
  if (observations.empty()) {
    Issue none = option_issue("", "", "has no reading to compare: give turns of layers, or diameters");
    none.file = wound.file;
    return none;
  }
  if (unknowns.empty()) return option_issue("", "", "nothing is unknown, so there is nothing to fit");
  const FitModel model(plan, wound, unknowns, settings.lay);
  Problem problem(model, unknowns, settings, progress);
  const std::optional<Solution> solution =
      search(problem, observations, static_cast<Index>(unknowns.size()), progress);
  if (progress.cancelled()) return option_issue("", "", stopped_text);
  if (!solution) return option_issue("", "", "could not be laid with settings near those of the plan");
  Fit result;
  fill(*solution, problem, unknowns, observations, result);
  result.corrections = corrections_of(plan, result.fitted);
  result.trials = problem.trials();
  result.text = conclusion_of(plan, result);
  return result;
}

}  // namespace laywright
