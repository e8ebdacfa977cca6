#include "app/ending.h"

#include <fmt/format.h>

#include "app/output.h"

namespace laywright {

int told(const Ending& ending) {
  print_issues(ending.issues);
  if (ending.code == exit_stopped) tell("stopped; nothing was written\n");
  if (!ending.done() || ending.text.empty()) return ending.code;
  return print(ending.text) ? exit_done : exit_not_written;
}

}  // namespace laywright
