// What the readings of a fit leave open.
#pragma once

#include <string>
#include <vector>

#include <Eigen/Dense>

#include "advise/fit.h"

namespace laywright {

// Directions in which the readings say less than what was believed: of the unknowns that make up most of each, their words; each
// said once. `readings`: their slopes, made independent, each of sigma 1, over unknowns in what is believed of them.
[[nodiscard]] std::vector<std::vector<std::string>> untold(const Eigen::MatrixXd& readings,
                                                           const std::vector<Unknown>& unknowns);

}  // namespace laywright
