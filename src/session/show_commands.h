// Commands while a wind is shown to others.
#pragma once

#include "session/command.h"

namespace laywright::cmd {

Command show();
Command pause_show();  // and go on
Command tell_sizes();  // of spool and fiber, or not
Command leave_show();

}  // namespace laywright::cmd
