// The search behind an improvement: positions of the settings, from good to bad, as the first layers show them.
#pragma once

#include <map>
#include <vector>

#include "advise/improve.h"

namespace laywright {

struct Found {
  std::vector<double> values;
  double cost = 0.0;
};

class ImproveSearch {
 public:
  // `draft`: the plan, ended after the layers that the search lays.
  ImproveSearch(const PlanDraft& draft, const std::vector<SearchableSetting>& searchables,
                const ImproveSettings& settings);

  // All positions that were tried, best first. Fewer when cancelled.
  [[nodiscard]] std::vector<Found> run(Progress& progress);
  [[nodiscard]] int trials() const { return trials_; }

 private:
  [[nodiscard]] std::vector<double> position(const std::vector<double>& unit) const;  // of [0, 1] each
  [[nodiscard]] std::vector<double> unit_of(const std::vector<double>& values) const;
  [[nodiscard]] double cost_at(const std::vector<double>& values, Progress& progress) const;
  [[nodiscard]] std::vector<std::vector<double>> usual_positions() const;
  [[nodiscard]] std::vector<Found> spread(const Stretch& stretch);
  [[nodiscard]] std::vector<Found> refine(const Found& start, int trials, Progress& progress) const;

  PlanDraft draft_;
  const std::vector<SearchableSetting>& searchables_;
  const ImproveSettings& settings_;
  LaySettings lay_;
  int trials_ = 0;
};

}  // namespace laywright
