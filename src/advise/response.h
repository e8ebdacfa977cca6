// A rough function near a place: the plane that touches what many points around it have in common, and how they scatter.
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

// By least squares, with squares of the coordinates beside them, so that what is curved does not tilt or lift the plane.
// Precondition: more points than twice the coordinates plus one, spread in all of them; as many values at each.
[[nodiscard]] Response response_of(const std::vector<Eigen::VectorXd>& points,
                                   const std::vector<Eigen::VectorXd>& values, const Eigen::VectorXd& centre);

}  // namespace laywright
