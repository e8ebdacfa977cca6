// Pieces of the lesson's panel.
#pragma once

#include <string>

#include "ui/panel_state.h"

namespace laywright {

enum class Sign { none, right, wrong };

// In the letters for reading, wrapped; strong ones for what is asked.
void reading_text(const std::string& text, const PanelState& state);
void strong_text(const std::string& text, const PanelState& state);

// A button as wide as the panel, with its key and a text that wraps.
[[nodiscard]] bool answer_button(int number, const std::string& text, Sign sign, bool open, PanelState& state);

// One that stands out as the way on.
[[nodiscard]] bool main_button(const char* name, const ImVec2& size);

// A tick or a cross, then words.
void signed_words(Sign sign, const std::string& words, const PanelState& state);

// How far a lesson has got, as a line in as many parts as it has steps.
void step_line(std::size_t step, std::size_t steps);

// Of each spool, fibers side by side with the guide's places turn after turn under them, and what that comes to over a layer.
void rulers(const Workbench& bench, const PanelState& state);

// The setting that the step lets change, with what comes of it beside what was.
void attempt_part(const Workbench& bench, PanelState& state, Commands& out);
// A step more or less of that setting, or the next choice; nothing where there is none.
void step_attempt(const Workbench& bench, double way, PanelState& state, Commands& out);

// Both builds' figures under each other.
void figure_table(const Workbench& bench, const PanelState& state);

}  // namespace laywright
