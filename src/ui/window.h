// The whole window: menus, panels, and the place that is left for the picture.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

struct WindowLayout {
  Box2 picture;
  std::optional<Box2> other;  // of the other side, while two builds are compared
};

// Draws everything but the pictures themselves, and gives what the person asked for.
[[nodiscard]] WindowLayout draw_window(const Workbench& bench, const Shown& shown, PanelState& state, Commands& out);

// After how many seconds the panels need a frame for what they do by themselves; none: not until something happens.
[[nodiscard]] std::optional<double> seconds_to_next_frame(const PanelState& state);

}  // namespace laywright
