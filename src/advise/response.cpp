#include "advise/response.h"

namespace laywright {

Response response_of(const std::vector<Eigen::VectorXd>& points, const std::vector<Eigen::VectorXd>& values,
                     const Eigen::VectorXd& centre) {
  using Eigen::Index;
  using Eigen::MatrixXd;
  const auto count = static_cast<Index>(points.size());
  const Index coordinates = centre.size();
  MatrixXd design(count, 2 * coordinates + 1), measured(count, values.front().size());
  for (Index i = 0; i < count; ++i) {
    const auto at = static_cast<std::size_t>(i);
    design(i, 0) = 1.0;
    const Eigen::RowVectorXd off = (points[at] - centre).transpose();
    design.row(i).segment(1, coordinates) = off;
    design.row(i).tail(coordinates) = off.cwiseAbs2();
    measured.row(i) = values[at].transpose();
  }
  const MatrixXd solved = design.colPivHouseholderQr().solve(measured);
  const MatrixXd rest = measured - design * solved;
  Response response;
  response.centre = centre;
  response.at_centre = solved.row(0).transpose();
  response.slope = solved.middleRows(1, coordinates).transpose();
  const double freedom = static_cast<double>(count - 2 * coordinates - 1);
  response.scatter = rest.transpose() * rest / freedom;
  return response;
}

}  // namespace laywright
