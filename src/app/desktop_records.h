// What the window says of records, for who drives it.
#pragma once

#include <nlohmann/json.hpp>

#include "ui/panel_state.h"

namespace laywright {

// Null until they were looked at.
[[nodiscard]] nlohmann::ordered_json records_json(const Workbench& bench, const PanelState& panels);

}  // namespace laywright
