// One place where something is wrong, before neighbouring places are merged into a finding.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "measure/arc.h"
#include "measure/measurements.h"

namespace laywright {

struct Occurrence {
  FindingKind kind = FindingKind::gap;
  std::optional<Side> side;
  int layer = 0;
  int layers = 1;                            // that it lasts from there on: each counts as one
  std::size_t first_node = 0, end_node = 0;  // fiber that it concerns
  double x_min_mm = 0.0, x_max_mm = 0.0;
  Arc arc;
  double size_mm = 0.0;        // what it measures: findings.h
  std::size_t worst_node = 0;  // where it is so large
  double detail = 0.0;         // a second figure for the sentence, where a kind has one
};

// Occurrences that lie side by side.
struct Cluster {
  Occurrence extent;  // first layer, all nodes, x and angle that they cover; size and place of the worst
  int last_layer = 0;
  int worst_layer = 0;
  int count = 1;
  std::vector<FindingPlace> places;  // the largest, up to twice Finding::most_places, in no order

  explicit Cluster(const Occurrence& occurrence)
      : extent(occurrence),
        last_layer(occurrence.layer + occurrence.layers - 1),
        worst_layer(last_layer),
        count(occurrence.layers),
        places{{occurrence.first_node, occurrence.end_node, occurrence.worst_node, occurrence.size_mm}} {}

  // Leaves the largest places, at most Finding::most_places, largest first; of equals the earlier.
  void keep_largest_places();
};

}  // namespace laywright
