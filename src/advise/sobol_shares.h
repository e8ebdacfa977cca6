// Which input moves an output most: variance shares of Sobol.
//
// Samples follow Saltelli's scheme: for each, rows a and b of independent inputs, and for each input i the row a with
// the value i of b. Estimators of Jansen (1999), as recommended by Saltelli et al., "Variance based sensitivity analysis
// of model output", Computer Physics Communications 181 (2010), table 2.
#pragma once

#include <cstdint>
#include <vector>

namespace laywright {

struct SobolShare {
  double first = 0.0;                           // of the variance, by this input alone
  double total = 0.0;                           // with all that it does together with others
  double first_error = 0.0, total_error = 0.0;  // one standard error, by a seeded bootstrap over the samples
};

// `outputs`: sample after sample, 2 + inputs values each: a, b, then a with one value of b. Samples with a value that
// is not finite are left out. Empty where the output does not vary, or fewer than two samples are left.
[[nodiscard]] std::vector<SobolShare> sobol_shares(const std::vector<double>& outputs, std::size_t inputs,
                                                   std::uint64_t seed);

// Value below which this share of the values lies, linear between order statistics. Precondition: not empty.
[[nodiscard]] double quantile(std::vector<double> values, double share);

}  // namespace laywright
