#include "app/command_outcome.h"

#include <fmt/format.h>

#include "app/output.h"

namespace laywright {

int conclude(const CommandOutcome& outcome) {
  print_issues(outcome.issues);
  if (outcome.code == exit_stopped) tell("stopped; nothing was written\n");
  if (!outcome.done() || outcome.text.empty()) return outcome.code;
  return print(outcome.text) ? exit_done : exit_not_written;
}

}  // namespace laywright
