// How hard each node is to be drawn off, computed when a colouring first asks for it and then kept.
#pragma once

#include <array>
#include <mutex>
#include <vector>

#include "payoff/payoff.h"

namespace laywright {

class LatePayoff {
 public:
  // In times the pull of winding, by node. Any thread may ask; the first waits for a fraction of the time that laying takes (a
  // tenth from the side, half over an end). All calls are of the same plan and build.
  [[nodiscard]] const std::vector<float>& forces(const Plan& plan, const Build& build, DrawOff way) {
    Way& one = ways_[static_cast<std::size_t>(way)];
    std::call_once(one.once, [&] {
      PayoffSettings settings;
      settings.way = way;
      settings.each_node = true;
      Progress progress;
      one.forces = pay_off(plan, build, settings, progress).multiples;
    });
    return one.forces;
  }

 private:
  struct Way {
    std::once_flag once;
    std::vector<float> forces;
  };
  std::array<Way, 3> ways_;
};

}  // namespace laywright
