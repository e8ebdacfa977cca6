// Commands that begin a plan anew.
#pragma once

#include "session/command.h"
#include "store/new_request.h"

namespace laywright::cmd {

// Searches for settings that give a good wind, in the background; Workbench::beginning() tells what comes of it.
Command propose_plan(const NewRequest& request);
Command stop_proposing();
// What was found, as a plan that has no file yet.
Command open_proposed();

}  // namespace laywright::cmd
