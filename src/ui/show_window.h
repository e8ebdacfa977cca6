// The window while a wind is shown to others: the picture, and a few words and figures over it.
#pragma once

#include "ui/panel_state.h"
#include "ui/window.h"

namespace laywright {

// Precondition of all: something is shown. The picture has the whole window.
[[nodiscard]] WindowLayout draw_show(const Workbench& bench, PanelState& state);

// What its words take of the picture's height, at most.
inline constexpr ShowRoom show_room{0.11, 0.2};

void show_key(std::string_view keys, PanelState& state, Commands& out);

// "12.40 km" of a wind of some kilometres from its beginning on, so that the unit stands still while it counts.
[[nodiscard]] std::string counted_length(double mm, double last_mm, Units units);
// "45,012"
[[nodiscard]] std::string counted_turns(double turns);
// "0 h 12 min" of a wind of some hours.
[[nodiscard]] std::string counted_time(double seconds, double last_s);

}  // namespace laywright
