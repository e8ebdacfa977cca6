// Functions that give the same bits on every machine: the libraries' own differ in the last bit, and a wind that is
// sensitive makes another wind of that. Sums, products and quotients alone.
#pragma once

#include <cmath>

namespace laywright {

// e^-x for x >= 0; its relative error is below 1e-12, and below 1e-15 for x <= 0.5, where the lay model asks.
[[nodiscard]] inline double exp_minus(double x) {
  if (!(x < 745.0)) return 0.0;
  int halvings = 0;
  for (; x > 0.5; x *= 0.5) ++halvings;
  double sum = 1.0;
  double term = 1.0;
  for (int n = 1; std::abs(term) > 1e-18; ++n) sum += term *= -x / n;
  for (; halvings > 0; --halvings) sum *= sum;
  return sum;
}

// cos x for |x| <= 1, to a unit in the last place.
[[nodiscard]] inline double cos_of_small(double x) {
  double sum = 1.0;
  double term = 1.0;
  for (int n = 2; std::abs(term) > 1e-18; n += 2) sum += term *= -x * x / (n * (n - 1));
  return sum;
}

}  // namespace laywright
