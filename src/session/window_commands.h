// Commands about the window: what it asks, what it tells, how large its letters are.
#pragma once

#include <cstddef>

#include "session/command.h"
#include "session/question.h"

namespace laywright::cmd {

Command ask(Question question);
Command answered();  // asked, or given up
Command dismiss_notice(std::size_t index);
Command set_scale(double scale);  // of the panels

}  // namespace laywright::cmd
