// What the window says of its advice, for whoever drives it from outside.
#pragma once

#include <nlohmann/json.hpp>

#include "ui/panel_state.h"

namespace laywright {

// Precondition: a plan is open.
[[nodiscard]] nlohmann::ordered_json advice_json(const Workbench& bench, const PanelState& panels);

}  // namespace laywright
