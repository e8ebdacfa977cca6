// What answers of the advice have in common: how far they are, whether they still hold, and setting the plan so.
#pragma once

#include <string>

#include "session/inquiry.h"
#include "ui/panel_state.h"

namespace laywright {

// Of the active plan's picture; without a plan the one that is remembered.
[[nodiscard]] Theme theme_of(const Workbench& bench);

// The person's units are inches and feet; without a plan those of the next one.
[[nodiscard]] bool in_inches(const Workbench& bench);

// A paragraph in a colour.
void coloured(const ImVec4& color, const std::string& text);

// A bar with "Stop" while the question is worked on; else why there is no answer, if there is none. `place`: its name for
// whoever drives the window.
void inquiry_line(const Workbench& bench, AdviceKind kind, const std::string& words, const std::string& place,
                  PanelState& state, Commands& out);

// The same of any question that is worked on.
void inquiry_line(const InquiryStatus& status, Theme theme, const std::string& words, const std::string& place,
                  const Command& stop, PanelState& state, Commands& out);

// What has become of the last saving: a bar, "Saved as FILE (1.2 MB)" by its first words, or why not.
void saving_line(const FileSaving& saving, Theme theme, const char* saved);

// That the plan is no longer the one that was asked about; nothing where it is.
void stale_line(const Workbench& bench, AdviceKind kind, const std::string& place, PanelState& state);

// "Set it so" and "Compare" of an option; where the plan is set so, that it is. True when one was pressed.
bool option_buttons(const Workbench& bench, AdviceKind kind, std::size_t option, const std::string& place,
                    PanelState& state, Commands& out);

// In strong letters, wrapped.
void heading(const std::string& text, const PanelState& state);

// A button that is grey, and says why, where its command cannot be done. True when it was pressed.
bool command_button(const Workbench& bench, const char* label, const Command& command, const std::string& tip,
                    Commands& out);

}  // namespace laywright
