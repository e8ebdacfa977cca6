#include "advise/sobol_shares.h"

#include <algorithm>
#include <cmath>

#include "base/random.h"

namespace laywright {
namespace {

struct Estimate {
  double first, total;
};

// Variance of all values of two columns of the samples.
double pooled_variance(const std::vector<double>& y, std::size_t rows, std::size_t first, std::size_t second,
                       const std::vector<std::size_t>& samples) {
  double mean = 0.0, variance = 0.0;
  for (const std::size_t s : samples) mean += y[s * rows + first] + y[s * rows + second];
  mean /= 2.0 * static_cast<double>(samples.size());
  for (const std::size_t s : samples) {
    variance += std::pow(y[s * rows + first] - mean, 2.0) + std::pow(y[s * rows + second] - mean, 2.0);
  }
  return variance / (2.0 * static_cast<double>(samples.size()));
}

double half_mean_square_difference(const std::vector<double>& y, std::size_t rows, std::size_t first,
                                   std::size_t second, const std::vector<std::size_t>& samples) {
  double sum = 0.0;
  for (const std::size_t s : samples) sum += std::pow(y[s * rows + first] - y[s * rows + second], 2.0);
  return sum / (2.0 * static_cast<double>(samples.size()));
}

// Of the samples at these places. Jansen: the variance that is left when i is shared, and when only i differs; each as a
// share of the variance of the rows that it compares, which keeps small samples from giving shares over 1.
std::vector<Estimate> estimates(const std::vector<double>& y, std::size_t inputs,
                                const std::vector<std::size_t>& samples) {
  constexpr std::size_t a = 0, b = 1;
  const std::size_t rows = inputs + 2;
  std::vector<Estimate> all;
  for (std::size_t i = 0; i < inputs; ++i) {
    const std::size_t mixed = 2 + i;
    const double of_first = pooled_variance(y, rows, b, mixed, samples);
    const double of_total = pooled_variance(y, rows, a, mixed, samples);
    if (!(of_first > 0.0) || !(of_total > 0.0)) return {};
    all.push_back({1.0 - half_mean_square_difference(y, rows, b, mixed, samples) / of_first,
                   half_mean_square_difference(y, rows, a, mixed, samples) / of_total});
  }
  return all;
}

std::vector<std::size_t> finite_samples(const std::vector<double>& y, std::size_t rows) {
  std::vector<std::size_t> samples;
  for (std::size_t s = 0; (s + 1) * rows <= y.size(); ++s) {
    const auto begin = y.begin() + static_cast<std::ptrdiff_t>(s * rows);
    if (std::all_of(begin, begin + static_cast<std::ptrdiff_t>(rows), [](double v) { return std::isfinite(v); })) {
      samples.push_back(s);
    }
  }
  return samples;
}

}  // namespace

std::vector<SobolShare> sobol_shares(const std::vector<double>& outputs, std::size_t inputs, std::uint64_t seed) {
  constexpr int replicates = 200;
  const std::vector<std::size_t> samples = finite_samples(outputs, inputs + 2);
  if (samples.size() < 2) return {};
  const std::vector<Estimate> all = estimates(outputs, inputs, samples);
  std::vector<SobolShare> shares;
  for (const Estimate& each : all) shares.push_back({each.first, each.total, 0.0, 0.0});
  if (shares.empty()) return shares;

  Random random(seed);
  std::vector<double> first_squares(inputs, 0.0), total_squares(inputs, 0.0);
  int counted = 0;
  for (int r = 0; r < replicates; ++r) {
    std::vector<std::size_t> drawn(samples.size());
    for (std::size_t& each : drawn) {
      each = samples[static_cast<std::size_t>(random.uniform() * static_cast<double>(samples.size()))];
    }
    const std::vector<Estimate> one = estimates(outputs, inputs, drawn);
    if (one.empty()) continue;  // the same sample every time
    ++counted;
    for (std::size_t i = 0; i < inputs; ++i) {
      first_squares[i] += std::pow(one[i].first - shares[i].first, 2.0);
      total_squares[i] += std::pow(one[i].total - shares[i].total, 2.0);
    }
  }
  for (std::size_t i = 0; i < inputs && counted > 0; ++i) {
    shares[i].first_error = std::sqrt(first_squares[i] / counted);
    shares[i].total_error = std::sqrt(total_squares[i] / counted);
  }
  return shares;
}

double quantile(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  const double at = share * static_cast<double>(values.size() - 1);
  const auto below = std::min(static_cast<std::size_t>(at), values.size() - 1);
  const std::size_t above = std::min(below + 1, values.size() - 1);
  return values[below] + (at - static_cast<double>(below)) * (values[above] - values[below]);
}

}  // namespace laywright
