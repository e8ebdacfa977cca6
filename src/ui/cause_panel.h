// Why a finding is there: the question, the answer, and what would remove it, below the list of findings.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// The name by which the keyboard goes to the answer.
inline constexpr const char* cause_focus = "Why";

// How high it stands, of so much room; 0: there is nothing to tell.
[[nodiscard]] float cause_height(const Workbench& bench, float room);

void cause_panel(const Workbench& bench, PanelState& state, Commands& out);

// There is an answer, or soon will be, to the finding that is chosen, or the plan is set as one says.
[[nodiscard]] bool is_answered(const Workbench& bench);

// When a search has begun, its tab comes to the front.
void show_new_search(const Workbench& bench, PanelState& state);

}  // namespace laywright
