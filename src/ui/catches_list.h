// How a wind comes off again, beside its findings: a line, and the places where it catches.
#pragma once

#include "desk/wound.h"
#include "session/command.h"
#include "ui/panel_state.h"

namespace laywright {

// Nothing as long as payoff is not computed.
void payoff_lines(const Wound& wound, PanelState& state, Commands& out);

}  // namespace laywright
