// Merges neighbouring occurrences of one kind and side into clusters, few enough to read.
//
// Occurrences are neighbours when they are near each other in x, in angle and in layer at once. Where the build is
// so disordered that many clusters remain, "near" is doubled until at most `most_clusters` are left, so a list
// stays short whatever the build, and memory and time are bounded while it is made.
#pragma once

#include <vector>

#include "measure/occurrence.h"

namespace laywright {

struct Nearness {
  double x_mm = 0.0;
  double angle_deg = 0.0;
  int layers = 0;
};

class Merger {
 public:
  static constexpr std::size_t most_clusters = 6;

  explicit Merger(const Nearness& nearness) : nearness_(nearness) {}

  void add(const Occurrence& occurrence);

  // The clusters, in the order in which they begin along the fiber.
  [[nodiscard]] std::vector<Cluster> finish();

 private:
  static constexpr std::size_t most_open = 64;

  [[nodiscard]] bool near(const Cluster& a, const Cluster& b) const;
  void merge_all();
  void widen();

  Nearness nearness_;
  std::vector<Cluster> clusters_;
};

}  // namespace laywright
