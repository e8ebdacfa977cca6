#include "follow/planned.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Dense>
#include <boost/math/distributions/chi_squared.hpp>

#include "advise/fit.h"
#include "advise/setting_text.h"

namespace laywright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double sigmas_allowed = 3.5;
constexpr double least_chance = 0.005;

struct Draws {
  VectorXd mean;
  MatrixXd covariance;  // of a further draw from the mean
};

std::optional<Draws> draws_of_readings(const std::vector<std::optional<std::vector<double>>>& read, Index readings) {
  std::vector<VectorXd> all;
  for (const auto& each : read) {
    if (each) all.push_back(Eigen::Map<const VectorXd>(each->data(), static_cast<Index>(each->size())));
  }
  if (all.size() < 2) return std::nullopt;
  const auto count = static_cast<double>(all.size());
  Draws draws{VectorXd::Zero(readings), MatrixXd::Zero(readings, readings)};
  for (const VectorXd& each : all) draws.mean += each / count;
  for (const VectorXd& each : all) draws.covariance += (each - draws.mean) * (each - draws.mean).transpose();
  draws.covariance *= (1.0 + 1.0 / count) / (count - 1.0);
  return draws;
}

}  // namespace

double Compared::off_sigmas() const { return sigmas_allowed * off() / tolerance; }
bool Compared::beyond() const { return std::abs(off()) > tolerance; }

bool Beside::on_plan() const {
  return chance >= least_chance &&
         std::none_of(readings.begin(), readings.end(), [](const Compared& each) { return each.beyond(); });
}

const Compared& Beside::most_off() const {
  return *std::max_element(readings.begin(), readings.end(), [](const Compared& a, const Compared& b) {
    return std::abs(a.off_sigmas()) < std::abs(b.off_sigmas());
  });
}

Result<Beside> beside_plan(const Plan& plan, const AsWound& wound, const ReadingErrors& errors,
                           const LaySettings& lay, int draws, int threads, const Stretch& stretch) {
  const std::vector<Observation> observations = observations_of(plan, wound, errors);
  if (observations.empty()) return nothing_to_compare(wound);
  const std::vector<Unknown> none;
  const FitModel model(plan, wound, none, lay);
  const auto count = static_cast<Index>(observations.size());
  const std::optional<Draws> drawn = draws_of_readings(model.predict_draws(draws, threads, stretch), count);
  if (stretch.progress.cancelled()) return stopped();
  if (!drawn) return option_issue("", "", "the plan could not be laid as far as the readings go");
  Beside beside;
  MatrixXd covariance = drawn->covariance;
  VectorXd off(count);
  for (Index i = 0; i < count; ++i) {
    const Observation& each = observations[static_cast<std::size_t>(i)];
    covariance(i, i) += each.sigma * each.sigma;
    beside.readings.push_back(
        {each, drawn->mean[i], std::sqrt(drawn->covariance(i, i)), sigmas_allowed * std::sqrt(covariance(i, i))});
    off[i] = beside.readings.back().off();
  }
  const double square = off.dot(covariance.ldlt().solve(off));
  beside.chance = boost::math::cdf(
      boost::math::complement(boost::math::chi_squared(static_cast<double>(count)), std::max(0.0, square)));
  return beside;
}

}  // namespace laywright
