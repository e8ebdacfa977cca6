// The search behind an improvement: positions of the settings, from good to bad, as the first layers show them.
#pragma once

#include <map>
#include <vector>

#include "advise/improve.h"

namespace laywright {

struct Found {
  std::vector<double> values;
  double cost = 0.0;
  bool good = false;
};

class ImproveSearch {
 public:
  // `draft`: the plan, ended after the layers that the search lays. `base`: where the search starts; the late settings stay there
  // until all others are found.
  ImproveSearch(const PlanDraft& draft, const std::vector<SearchableSetting>& searchables, std::vector<double> base,
                const ImproveSettings& settings);

  // All positions that were tried, best first. Fewer when cancelled.
  [[nodiscard]] std::vector<Found> run(Progress& progress);
  [[nodiscard]] int trials() const { return trials_; }
  [[nodiscard]] bool turned_late() const { return turned_late_; }

 private:
  // Of [0, 1] each, those that are not late.
  [[nodiscard]] std::vector<double> position(const std::vector<double>& unit) const;
  [[nodiscard]] std::vector<double> unit_of(const std::vector<double>& values) const;
  void lay_at(Found& place, Progress& progress) const;
  [[nodiscard]] std::vector<std::vector<double>> usual_positions() const;
  [[nodiscard]] std::vector<Found> spread(const Stretch& stretch);
  [[nodiscard]] std::vector<Found> refine(const Found& start, int trials, Progress& progress) const;
  void turn_late(std::vector<Found>& all, const Stretch& stretch);

  PlanDraft draft_;
  const std::vector<SearchableSetting>& searchables_;
  std::vector<double> base_;
  std::size_t early_ = 0;  // so many searchables that are not late
  const ImproveSettings& settings_;
  LaySettings lay_;
  int trials_ = 0;
  bool turned_late_ = false;
};

}  // namespace laywright
