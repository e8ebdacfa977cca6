// A plan laid and measured: how most commands begin.
#pragma once

#include <memory>

#include "app/ending.h"
#include "app/watch.h"
#include "lay/lay.h"
#include "measure/measurements.h"

namespace laywright {

struct WoundPlan {
  Ending ending;  // warnings; or stopped, or why it could not be laid, and then there is no build
  std::shared_ptr<const Build> build;
  std::shared_ptr<const Measurements> measurements;
};

// The watch tells how far it is, and stops it.
[[nodiscard]] WoundPlan lay_and_measure(const Plan& plan, const LaySettings& settings, Watch& watch);

}  // namespace laywright
