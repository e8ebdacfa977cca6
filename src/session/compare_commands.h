// Commands of two builds side by side.
#pragma once

#include <cstddef>
#include <optional>

#include "session/command.h"

namespace laywright::cmd {

Command pin_build();  // keeps the build as it is now, to compare what comes with it
Command compare_with(std::size_t document);
Command stop_comparing();
Command toggle_linked();
// The other picture, or the active one; none: the one that is not in hand.
Command take_in_hand(std::optional<bool> other = std::nullopt);

}  // namespace laywright::cmd
