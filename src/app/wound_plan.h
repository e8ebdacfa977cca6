// A plan laid and measured: how most commands begin.
#pragma once

#include <memory>
#include <optional>

#include "app/command_line.h"
#include "app/command_outcome.h"
#include "app/watch.h"
#include "lay/lay.h"
#include "measure/measurements.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

struct WoundPlan {
  CommandOutcome outcome;  // warnings; or stopped, or why it could not be laid, and then there is no build
  std::shared_ptr<const Build> build;
  std::shared_ptr<const Measurements> measurements;
};

// The watch tells how far it is, and stops it.
[[nodiscard]] WoundPlan lay_and_measure(const Plan& plan, const LaySettings& settings, Watch& watch);

// The verdict over so many draws, the wound one among them; without a number, over as many as are due. None when stopped.
[[nodiscard]] std::optional<WindVerdict> judged_over_draws(const Plan& plan, const LaySettings& settings,
                                                           const WoundPlan& wound, const TakeupRun& run,
                                                           std::optional<int> draws, Watch& watch);

// --draws.
void add_draws_option(CommandLine command, std::optional<int>& draws);

}  // namespace laywright
