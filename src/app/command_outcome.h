// What came of a command's work, to be told when its progress bar is gone.
#pragma once

#include <string>

#include "app/exit_code.h"
#include "base/issue.h"

namespace laywright {

struct CommandOutcome {
  ExitCode code = exit_done;
  Issues issues;     // what kept it from being done, or warnings
  std::string text;  // what was made, for standard output

  [[nodiscard]] bool done() const { return code == exit_done; }
};

// Prints it, and returns the exit code. Not while a Watch stands: its bar would be in the way.
[[nodiscard]] int conclude(const CommandOutcome& outcome);

}  // namespace laywright
