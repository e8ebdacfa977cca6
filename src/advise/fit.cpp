#include "advise/fit.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

#include "advise/fit_words.h"
#include "advise/least_squares.h"
#include "advise/setting_text.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double z95 = 1.959964;  // of the normal distribution, 95 % within
// Sizes in units of beliefs. Differences must be wide against the roughness of a wind.
constexpr double difference_step = 0.5, small_move = 0.05;
constexpr int most_rounds = 8;

// Unknowns in units of what is believed of them, around it.
class Problem {
 public:
  Problem(const FitModel& model, const std::vector<Unknown>& unknowns, const std::vector<Observation>& observations,
          int threads, Progress& progress)
      : model_(model), unknowns_(unknowns), observations_(observations), threads_(threads), progress_(progress) {}

  [[nodiscard]] std::vector<double> values_at(const VectorXd& x) const {
    std::vector<double> values;
    for (std::size_t i = 0; i < unknowns_.size(); ++i) {
      values.push_back(unknowns_[i].believed + unknowns_[i].belief * x[static_cast<Index>(i)]);
    }
    return values;
  }

  // Readings first, then the beliefs.
  std::optional<std::vector<VectorXd>> operator()(const std::vector<VectorXd>& points) {
    std::vector<std::vector<double>> values;
    for (const VectorXd& x : points) values.push_back(values_at(x));
    const auto read = predict(values);
    if (!read) return std::nullopt;
    std::vector<VectorXd> all;
    for (std::size_t p = 0; p < points.size(); ++p) {
      VectorXd one(static_cast<Index>(observations_.size()) + points[p].size());
      for (std::size_t i = 0; i < observations_.size(); ++i) {
        one[static_cast<Index>(i)] = ((*read)[p].mean[i] - observations_[i].measured) / sigmas_[i];
      }
      one.tail(points[p].size()) = points[p];
      all.push_back(std::move(one));
    }
    return all;
  }

  // Takes the scatter of winds at x into the sigmas: that of the real spool, and of the mean that stands for the model.
  // False when stopped.
  bool weigh_at(const VectorXd& x) {
    const auto read = predict({values_at(x)});
    if (!read) return false;
    constexpr double of_wind_and_mean = 1.0 + 1.0 / 5.0;
    sigmas_.clear();
    for (std::size_t i = 0; i < observations_.size(); ++i) {
      const double scatter = read->front().scatter[i];
      sigmas_.push_back(std::sqrt(observations_[i].sigma * observations_[i].sigma + of_wind_and_mean * scatter * scatter));
    }
    return true;
  }

  [[nodiscard]] const std::vector<double>& sigmas() const { return sigmas_; }
  [[nodiscard]] int trials() const { return trials_; }

 private:
  std::optional<std::vector<FitModel::Prediction>> predict(const std::vector<std::vector<double>>& values) {
    constexpr double share_of_way = 0.1;
    const double way = progress_.share();
    trials_ += static_cast<int>(values.size());
    return model_.predict(values, threads_, {progress_, way, way + share_of_way * (1.0 - way)});
  }

  const FitModel& model_;
  const std::vector<Unknown>& unknowns_;
  const std::vector<Observation>& observations_;
  int threads_;
  Progress& progress_;
  std::vector<double> sigmas_;  // of the readings, with that of the wind itself
  int trials_ = 0;
};

// Directions in which the readings say less than what was believed: of the unknowns that make up most of each.
std::vector<std::vector<std::string>> untold(const MatrixXd& readings, const std::vector<Unknown>& unknowns) {
  constexpr double notable = 0.35;
  const Eigen::SelfAdjointEigenSolver<MatrixXd> solver(readings.transpose() * readings);
  std::vector<std::vector<std::string>> groups;
  for (Index k = 0; k < solver.eigenvalues().size(); ++k) {
    if (solver.eigenvalues()[k] >= 1.0) continue;
    std::vector<std::string> group;
    for (Index i = 0; i < solver.eigenvectors().rows(); ++i) {
      if (std::abs(solver.eigenvectors()(i, k)) >= notable) group.push_back(unknowns[static_cast<std::size_t>(i)].words);
    }
    if (std::find(groups.begin(), groups.end(), group) == groups.end()) groups.push_back(std::move(group));
  }
  return groups;
}

// Settings that make the next spool what the plan wanted: the pitch in the same proportion to the fiber as it is, stops
// as far from the flange; each as much off the other way as it was found off.
std::vector<Correction> corrections_of(const Plan& plan, const std::vector<Fitted>& fitted) {
  double thicker = 1.0;
  for (const Fitted& each : fitted) {
    if (each.unknown.path == "fiber.diameter" && each.told_by_readings) thicker = each.value / each.unknown.believed;
  }
  std::vector<Correction> corrections;
  for (const Fitted& each : fitted) {
    const double now = each.unknown.believed;
    const bool off = (now < each.low || now > each.high) && each.told_by_readings;
    if (each.unknown.path == "traverse.pitch" && (off || std::abs(thicker - 1.0) > 0.005)) {
      const double true_to_set = off ? each.value / now : 1.0;
      corrections.push_back({each.unknown.path, now * thicker / true_to_set});
    }
    const bool stop = each.unknown.path == "traverse.left_stop" || each.unknown.path == "traverse.right_stop";
    if (stop && off) {
      const double more_room = 0.5 * (thicker - 1.0) * plan.fiber().diameter_mm;
      corrections.push_back({each.unknown.path, now + more_room - (each.value - now)});
    }
    if (each.unknown.path == "traverse.reversal.turns" && off) {
      const double less = now - (each.value - now);
      if (less >= 0.0 && now > 0.0) corrections.push_back({each.unknown.path, less});
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

void fill(const LeastSquares& least, const Problem& problem, const std::vector<Unknown>& unknowns,
          const std::vector<Observation>& observations, Fit& fit) {
  const auto readings = static_cast<Index>(observations.size());
  const VectorXd of_readings = least.residuals.head(readings);
  fit.misfit = std::sqrt(of_readings.squaredNorm() / static_cast<double>(readings));
  // Readings that scatter more than they should make all intervals wider.
  const double wider = std::max(1.0, fit.misfit);
  const MatrixXd covariance =
      (least.jacobian.transpose() * least.jacobian).ldlt().solve(MatrixXd::Identity(least.x.size(), least.x.size()));
  const std::vector<double> values = problem.values_at(least.x);
  constexpr double hardly_better = 0.8;  // of the sigma that was believed
  for (std::size_t i = 0; i < unknowns.size(); ++i) {
    const Unknown& unknown = unknowns[i];
    const auto at = static_cast<Index>(i);
    const double in_beliefs = std::sqrt(covariance(at, at));
    Fitted fitted{unknown, std::clamp(values[i], unknown.least, unknown.most), wider * in_beliefs * unknown.belief,
                  0.0, 0.0, in_beliefs < hardly_better};
    fitted.low = std::max(unknown.least, fitted.value - z95 * fitted.sigma);
    fitted.high = std::min(unknown.most, fitted.value + z95 * fitted.sigma);
    fit.fitted.push_back(std::move(fitted));
  }
  for (std::size_t i = 0; i < observations.size(); ++i) {
    Observation each = observations[i];
    each.sigma = problem.sigmas()[i];
    fit.residuals.push_back({each, each.measured + each.sigma * of_readings[static_cast<Index>(i)]});
  }
  fit.not_told_apart = untold(least.jacobian.topRows(readings), unknowns);
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
  Problem problem(model, unknowns, observations, settings.threads, progress);
  const auto count = static_cast<Index>(unknowns.size());
  std::optional<LeastSquares> least;
  // Twice: winds scatter otherwise at the solution than where it is sought.
  VectorXd start = VectorXd::Zero(count);
  for (int pass = 0; pass < 2; ++pass) {
    least.reset();
    if (!problem.weigh_at(start)) break;
    least = least_squares([&](const std::vector<VectorXd>& points) { return problem(points); }, start,
                          VectorXd::Constant(count, difference_step), small_move, most_rounds);
    if (!least) break;
    start = least->x;
  }
  if (progress.cancelled()) return option_issue("", "", stopped_text);
  if (!least) return option_issue("", "", "could not be laid with settings near those of the plan");
  Fit result;
  fill(*least, problem, unknowns, observations, result);
  result.corrections = corrections_of(plan, result.fitted);
  result.trials = problem.trials();
  result.text = conclusion_of(plan, result);
  return result;
}

}  // namespace laywright
