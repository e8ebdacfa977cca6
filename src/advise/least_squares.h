// Nonlinear least squares with a function that is costly and a little rough: Levenberg and Marquardt.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <Eigen/Dense>

namespace laywright {

struct LeastSquares {
  Eigen::VectorXd x;          // at the least sum of squares found
  Eigen::VectorXd residuals;  // there
  Eigen::MatrixXd jacobian;   // there
};

// Values at several points at once; none where the work was stopped.
using Residuals = std::function<std::optional<std::vector<Eigen::VectorXd>>(const std::vector<Eigen::VectorXd>&)>;

// Starts at `x`. Derivatives are differences over `steps`, on both sides: the function may be rough below them. Stops
// when x moves by less than `small` or after `most_rounds` derivatives. None when stopped.
[[nodiscard]] std::optional<LeastSquares> least_squares(const Residuals& residuals, Eigen::VectorXd x,
                                                        const Eigen::VectorXd& steps, double small, int most_rounds);

}  // namespace laywright
