// How exactly was measured and what is believed, as options of the commands that fit.
#pragma once

#include <string>
#include <vector>

#include "advise/fit.h"
#include "app/command_line.h"
#include "app/reading_options.h"

namespace laywright {

struct FitTuning {
  ReadingOptions reading;
  std::vector<std::string> beliefs;
};

// Those of readings, and --belief.
void add_fit_tuning(CommandLine command, FitTuning& tuning);

// Errors: an option that says no value of the plan.
[[nodiscard]] Result<FitSettings> fit_settings(const PlanDraft& draft, const LaySettings& lay, int threads,
                                               const FitTuning& tuning);

}  // namespace laywright
