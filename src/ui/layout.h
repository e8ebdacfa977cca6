// What the panels remember from one start of the program to the next, as a line of words for the settings: which tabs are
// in front, whether the drawer is open, and how high.
#pragma once

#include <string>

#include "ui/panel_state.h"

namespace laywright {

// "drawer open, 14.5 high; tabs Plan, Section, Findings"; of the tabs that were drawn last.
[[nodiscard]] std::string layout_words(const PanelState& state);

// Takes over what can be understood of such words, whatever they are; the rest stays as it is.
void take_layout(PanelState& state, const std::string& words);

// True once for a tab that take_layout found in front.
[[nodiscard]] bool was_in_front(PanelState& state, const std::string& tab);

}  // namespace laywright
