// The lesson as it is taken: what the step says and asks, what was answered, what can be tried, and the way on.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// Precondition of all: a lesson is open.
void lesson_panel(const Workbench& bench, PanelState& state, Commands& out);

// From the step to the next one; from the last step to the next lesson, or out of the last lesson.
[[nodiscard]] Command on_from(const Workbench& bench);

// True: the lesson takes the key.
bool lesson_key(std::string_view keys, const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
