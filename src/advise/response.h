// A rough function as a plane: what many points around a place have in common, and how they scatter about it.
#pragma once

#include <vector>

#include <Eigen/Dense>

namespace laywright {

// values(x) = at_centre + slope (x - centre), give or take what scatters.
struct Response {
  Eigen::VectorXd centre, at_centre;
  Eigen::MatrixXd slope;    // values x coordinates
  Eigen::MatrixXd scatter;  // covariance of the values of one point: what is off at one is often off at the next

  [[nodiscard]] Eigen::VectorXd at(const Eigen::VectorXd& x) const { return at_centre + slope * (x - centre); }
};

// By least squares. Precondition: more points than coordinates plus one, as many values at each, not all points in a
// plane.
[[nodiscard]] Response response_of(const std::vector<Eigen::VectorXd>& points,
                                   const std::vector<Eigen::VectorXd>& values, const Eigen::VectorXd& centre);

}  // namespace laywright
