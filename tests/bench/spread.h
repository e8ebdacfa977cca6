// Mean and spread of figures of several winds, and how these differ.
#pragma once

#include <cmath>
#include <vector>

namespace laywright::bench {

struct Spread {
  double mean = 0.0, deviation = 0.0;  // the standard deviation of one; 0 where there is but one
};

// Precondition: not empty.
inline Spread spread_of(const std::vector<double>& figures) {
  const auto count = static_cast<double>(figures.size());
  double sum = 0.0, squares = 0.0;
  for (const double figure : figures) sum += figure;
  const double mean = sum / count;
  for (const double figure : figures) squares += (figure - mean) * (figure - mean);
  return {mean, figures.size() > 1 ? std::sqrt(squares / (count - 1.0)) : 0.0};
}

// From 0 to 1, even over the range however many there are of 0, 1, 2, ...: steps of the golden section.
inline double evenly(int number) { return std::fmod(0.5 + 0.618033988749895 * number, 1.0); }

}  // namespace laywright::bench
