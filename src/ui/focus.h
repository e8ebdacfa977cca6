// How a panel takes the keyboard, and what is drawn of that.
#pragma once

#include <string_view>

#include "ui/panel_state.h"

namespace laywright {

// Section, map and study have keys of their own.
[[nodiscard]] bool is_drawing(std::string_view panel);

// The keyboard goes to this panel, in the next frame. The same panel again: to the controls above its drawing or list.
void go_to_panel(std::string_view panel, PanelState& state);
void go_to_picture(PanelState& state);

// The panel's drawing has the keyboard.
[[nodiscard]] bool drawing_has_keys(std::string_view panel, const PanelState& state);

// In the panel's window, or in that of its list (`list`): takes the keyboard if it is due here.
void take_keys_here(std::string_view panel, bool list, PanelState& state);
// The same for the item drawn last.
void take_keys_to_item(std::string_view panel, PanelState& state);

// In any window: it takes the keyboard now, with its first item or the one that stands as default.
void take_keys_now();

// At the end of a frame. A click of the mouse takes the keyboard back to the picture, but from the list it was made in.
void settle_keys(PanelState& state);
void keep_keys_in_list(std::string_view panel, PanelState& state);

// Of a drawing with the keyboard: its frame, and the place that Enter picks.
void draw_key_frame(const ImVec2& low, const ImVec2& high);

}  // namespace laywright
