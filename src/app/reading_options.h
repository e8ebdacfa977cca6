// How exactly a spool was read: what commands that take readings have in common.
#pragma once

#include <string>

#include "advise/fit_model.h"
#include "app/command_line.h"
#include "base/issue.h"
#include "plan/lay_plan.h"

namespace laywright {

struct ReadingOptions {
  std::string diameter_error, width_error;
  double turns_error_percent = 1.0;
};

// --turns-error, --diameter-error and --width-error.
void add_reading_options(CommandLine command, ReadingOptions& options);

// Issues about what is no length.
[[nodiscard]] Issues read_errors(const PlanDraft& draft, const ReadingOptions& options, ReadingErrors& errors);

}  // namespace laywright
