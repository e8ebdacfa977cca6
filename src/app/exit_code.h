// What the program returns to the shell.
#pragma once

namespace laywright {

enum ExitCode : int {
  exit_done = 0,
  exit_unsound = 1,       // the plan, or another input, cannot be used
  exit_command_line = 2,  // no such command or option
  exit_not_written = 3,   // a result could not be written, no picture drawn, or no window opened
  exit_stopped = 130,     // stopped by the person
};

}  // namespace laywright
