// How hard each node is to be drawn off, computed when a colouring first asks for it and then kept.
#pragma once

#include <array>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "payoff/payoff.h"

namespace laywright {

class LatePayoff {
 public:
  using Forces = std::shared_ptr<const std::vector<float>>;

  // In times the pull of winding, by node. Any thread may ask; the first waits for a fraction of the time that laying takes (a
  // tenth from the side, half over an end), others for the first. All calls are of the same plan and build. Null: cancelled through
  // `progress` before it was ready; nothing is kept of it.
  [[nodiscard]] Forces forces(const Plan& plan, const Build& build, DrawOff way, Progress& progress) {
    Way& one = ways_[static_cast<std::size_t>(way)];
    const std::lock_guard lock(one.mutex);
    if (!one.forces && !progress.cancelled()) {
      PayoffSettings settings;
      settings.way = way;
      settings.each_node = true;
      PayoffRun run = pay_off(plan, build, settings, progress);
      if (progress.cancelled()) return nullptr;
      one.forces = std::make_shared<const std::vector<float>>(std::move(run.multiples));
    }
    return one.forces;
  }

  // What is kept already; null, and at once, while there is nothing.
  [[nodiscard]] Forces known(DrawOff way) {
    Way& one = ways_[static_cast<std::size_t>(way)];
    const std::unique_lock lock(one.mutex, std::try_to_lock);
    return lock ? one.forces : nullptr;
  }

 private:
  struct Way {
    std::mutex mutex;
    Forces forces;
  };
  std::array<Way, 3> ways_;
};

}  // namespace laywright
