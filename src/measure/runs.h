// Joins nodes of a stroke that have something wrong into runs along the fiber: one run, one occurrence.
#pragma once

#include <optional>
#include <vector>

#include "measure/occurrence.h"
#include "measure/stroke_view.h"

namespace laywright {

class Runs {
 public:
  // A shorter interruption does not end a run: a figure that hovers about its limit is one occurrence, and their
  // number does not depend on the stations.
  static constexpr double joined_over_deg = 5.0;

  Runs(const StrokeView& view, FindingKind kind);

  // A node with something wrong, this large, from x_min to x_max. Precondition: nodes come in rising order.
  void add(std::size_t node, double size_mm, double x_min_mm, double x_max_mm);

  [[nodiscard]] std::vector<Occurrence> finish();

 private:
  void close();

  const StrokeView& view_;
  FindingKind kind_;
  std::size_t joined_over_;  // nodes
  std::optional<Occurrence> open_;
  std::vector<Occurrence> done_;
};

// Arc of the nodes [first, end), each standing for the angle of one station.
[[nodiscard]] Arc arc_of_nodes(std::size_t first, std::size_t end, std::size_t stations);

}  // namespace laywright
