#include "advise/fit_search.h"

#include <algorithm>
#include <utility>

#include "advise/lattice.h"

namespace laywright {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

std::vector<double> FitProblem::values_at(const VectorXd& x) const {
  std::vector<double> values;
  for (std::size_t i = 0; i < unknowns_.size(); ++i) {
    values.push_back(unknowns_[i].believed + unknowns_[i].belief * x[static_cast<Index>(i)]);
  }
  return values;
}

std::optional<Response> FitProblem::response_around(const VectorXd& x, const VectorXd& half_widths, double end) {
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
  const auto read = model_.predict(
      values, settings_.threads,
      {stretch_.progress, stretch_.progress.share(), stretch_.from + end * (stretch_.to - stretch_.from)});
  trials_ += static_cast<int>(count);
  for (std::size_t p = 0; p < count; ++p) {
    if (!read[p]) continue;
    points_.push_back(points[p]);
    readings_.push_back(Eigen::Map<const VectorXd>(read[p]->data(), static_cast<Index>(read[p]->size())));
  }
  if (cancelled()) return std::nullopt;
  return response_within(x, half_widths, count / 2);
}

std::optional<Response> FitProblem::response_within(const VectorXd& x, const VectorXd& half_widths,
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

namespace {

FitSolution solve(const Response& response, const std::vector<Observation>& observations) {
  const auto count = static_cast<Index>(observations.size());
  VectorXd measured(count);
  MatrixXd errors = response.scatter;
  for (Index i = 0; i < count; ++i) {
    const Observation& each = observations[static_cast<std::size_t>(i)];
    measured[i] = each.measured;
    errors(i, i) += each.sigma * each.sigma;
  }
  FitSolution s;
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

}  // namespace

std::optional<FitSolution> search_fit(FitProblem& problem, const std::vector<Observation>& observations,
                                      Index unknowns) {
  constexpr int most_passes = 5;
  constexpr double first_half_width = 1.5, least_half_width = 1.0, sigmas_wide = 2.0, stays = 0.3;
  VectorXd x = VectorXd::Zero(unknowns), half_widths = VectorXd::Constant(unknowns, first_half_width);
  std::optional<FitSolution> solution;
  for (int pass = 0; pass < most_passes; ++pass) {
    const std::optional<Response> response =
        problem.response_around(x, half_widths, static_cast<double>(pass + 1) / most_passes);
    if (!response || problem.cancelled()) return std::nullopt;
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

}  // namespace laywright
