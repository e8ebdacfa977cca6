#include "advise/least_squares.h"

#include <utility>

#include <unsupported/Eigen/LevenbergMarquardt>

namespace laywright {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

// As Eigen wants it: values and derivatives at a point; a negative answer ends the search.
struct Problem : Eigen::DenseFunctor<double> {
  Problem(const Residuals& function, const VectorXd& differences, int inputs, int values)
      : DenseFunctor(inputs, values), residuals(function), steps(differences) {}

  int operator()(const VectorXd& x, VectorXd& values) const {
    const auto all = residuals({x});
    if (!all) return -1;
    values = all->front();
    return 0;
  }

  int df(const VectorXd& x, MatrixXd& jacobian) const {
    std::vector<VectorXd> points;
    for (Eigen::Index i = 0; i < x.size(); ++i) {
      for (const double side : {1.0, -1.0}) {
        points.push_back(x);
        points.back()[i] += side * steps[i];
      }
    }
    const auto all = residuals(points);
    if (!all) return -1;
    jacobian.resize(values(), inputs());
    for (Eigen::Index i = 0; i < x.size(); ++i) {
      const auto at = static_cast<std::size_t>(2 * i);
      jacobian.col(i) = ((*all)[at] - (*all)[at + 1]) / (2.0 * steps[i]);
    }
    return 0;
  }

  const Residuals& residuals;
  const VectorXd& steps;
};

}  // namespace

std::optional<LeastSquares> least_squares(const Residuals& residuals, VectorXd x, const VectorXd& steps, double small,
                                          int most_rounds) {
  const auto first = residuals({x});
  if (!first) return std::nullopt;
  Problem problem(residuals, steps, static_cast<int>(x.size()), static_cast<int>(first->front().size()));
  Eigen::LevenbergMarquardt<Problem> search(problem);
  search.setXtol(small);
  search.setFtol(small * small);
  search.setMaxfev(4 * most_rounds);
  auto status = search.minimizeInit(x);
  for (int round = 0; round < most_rounds; ++round) {
    status = search.minimizeOneStep(x);
    if (status == Eigen::LevenbergMarquardtSpace::UserAsked) return std::nullopt;
    if (status != Eigen::LevenbergMarquardtSpace::Running) break;
  }
  LeastSquares result;
  result.x = x;
  if (problem(x, result.residuals) < 0 || problem.df(x, result.jacobian) < 0) return std::nullopt;
  return result;
}

}  // namespace laywright
