#include "advise/fit_untold.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace laywright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;

using Group = std::vector<std::string>;

bool holds(const Group& group, const std::string& name) {
  return std::find(group.begin(), group.end(), name) != group.end();
}

bool holds_all(const Group& group, const Group& other) {
  return std::all_of(other.begin(), other.end(), [&](const std::string& each) { return holds(group, each); });
}

// Said once: what the readings say nothing of alone, and of the others each group that is no part of another.
std::vector<Group> said_once(const std::vector<Group>& groups) {
  Group alone;
  for (const Group& group : groups) {
    if (group.size() == 1 && !holds(alone, group.front())) alone.push_back(group.front());
  }
  std::vector<Group> together;
  for (Group group : groups) {
    std::erase_if(group, [&](const std::string& each) { return holds(alone, each); });
    const bool known =
        std::any_of(together.begin(), together.end(), [&](const Group& other) { return holds_all(other, group); });
    if (group.size() < 2 || known) continue;
    std::erase_if(together, [&](const Group& other) { return holds_all(group, other); });
    together.push_back(std::move(group));
  }
  std::vector<Group> all;
  for (std::string& each : alone) all.push_back({std::move(each)});
  all.insert(all.end(), together.begin(), together.end());
  return all;
}

}  // namespace

std::vector<std::vector<std::string>> untold(const MatrixXd& readings, const std::vector<Unknown>& unknowns) {
  constexpr double notable = 0.35;
  const Eigen::SelfAdjointEigenSolver<MatrixXd> solver(readings.transpose() * readings);
  std::vector<Group> groups;
  for (Index k = 0; k < solver.eigenvalues().size(); ++k) {
    if (solver.eigenvalues()[k] >= 1.0) continue;
    Group group;
    for (Index i = 0; i < solver.eigenvectors().rows(); ++i) {
      if (std::abs(solver.eigenvectors()(i, k)) >= notable)
        group.push_back(unknowns[static_cast<std::size_t>(i)].words);
    }
    groups.push_back(std::move(group));
  }
  return said_once(groups);
}

}  // namespace laywright
