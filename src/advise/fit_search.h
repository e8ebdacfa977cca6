// The search behind a fit: the most likely unknowns, by planes through winds that were laid around them.
#pragma once

#include <optional>
#include <vector>

#include <Eigen/Dense>

#include "advise/fit.h"
#include "advise/fit_model.h"
#include "advise/response.h"

namespace laywright {

// The readings as planes over the unknowns, which are counted in what is believed of them. A wind is too rough for
// derivatives at a point: a diameter jumps by a tenth of a fiber where a turn begins to climb.
class FitProblem {
 public:
  FitProblem(const FitModel& model, const std::vector<Unknown>& unknowns, const FitSettings& settings,
             const Stretch& stretch)
      : model_(model), unknowns_(unknowns), settings_(settings), stretch_(stretch) {}

  [[nodiscard]] std::vector<double> values_at(const Eigen::VectorXd& x) const;

  // Points evenly in a box around x; `end`: of the way of the stretch. None when too few can be laid.
  std::optional<Response> response_around(const Eigen::VectorXd& x, const Eigen::VectorXd& half_widths, double end);

  [[nodiscard]] int trials() const { return trials_; }
  [[nodiscard]] bool cancelled() const { return stretch_.progress.cancelled(); }

 private:
  // Of all that was laid so far, in this box or an earlier one.
  [[nodiscard]] std::optional<Response> response_within(const Eigen::VectorXd& x, const Eigen::VectorXd& half_widths,
                                                        std::size_t least_points) const;

  const FitModel& model_;
  const std::vector<Unknown>& unknowns_;
  const FitSettings& settings_;
  const Stretch stretch_;
  std::vector<Eigen::VectorXd> points_, readings_;  // that were laid
  int trials_ = 0;
};

// The most likely unknowns on a response, with beliefs as further readings of 0 with sigma 1.
struct FitSolution {
  Eigen::VectorXd x;
  Eigen::MatrixXd covariance;
  Eigen::VectorXd model, sigmas;  // readings, and how exact they are with the scatter of a wind
  // Readings made independent, each of sigma 1: slopes, and model less measured.
  Eigen::MatrixXd white_slope;
  Eigen::VectorXd white_residuals;
};

// Ever closer around the solution, until it stays. None when cancelled, or too few winds could be laid.
[[nodiscard]] std::optional<FitSolution> search_fit(FitProblem& problem,
                                                    const std::vector<Observation>& observations,
                                                    Eigen::Index unknowns);

}  // namespace laywright
