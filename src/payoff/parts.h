// The parts of pay_off(), one file each.
#pragma once

#include <cstddef>
#include <vector>

#include "lay/section.h"
#include "payoff/payoff.h"

namespace laywright {

// A node that sits in a slit.
struct InSlit {
  std::size_t node = 0;
  double lean_rad = 0.0;
  double turns_above = 0.0;  // that lay on it when the wind was complete
};

// A stretch of fiber over which earlier turns lie.
struct Covered {
  std::size_t first_node = 0, end_node = 0;
};

// What is found on the way through the build: each node as it lies among those laid before it.
struct Unwinding {
  std::vector<InSlit> slits;     // in rising order of node
  std::vector<Covered> covered;  // the same
  std::vector<float> bends_rad;  // of each node, over an end only
};

[[nodiscard]] Unwinding unwind(const Plan& plan, const Build& build, DrawOff way, Progress& progress);

// One node's force, and what of it counts most.
struct Held {
  HeldBy by = HeldBy::free;
  double multiple = 1.0;
};

// Asked in rising order of node.
class Forces {
 public:
  Forces(const Plan& plan, const Build& build, const Unwinding& found, const PayoffSettings& settings);

  [[nodiscard]] Held at(std::size_t node);

 private:
  const Build& build_;
  const Unwinding& found_;
  double friction_, d_, steepness_;
  bool over_end_;
  double eye_x_mm_, eye_mm_;
  std::size_t slit_ = 0, covered_ = 0;
};

[[nodiscard]] double eye_distance_mm(const Plan& plan, const PayoffSettings& settings);

}  // namespace laywright
