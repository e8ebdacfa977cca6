// A wind that is followed, in words: the same for the command and the window, which may tell them in inches and feet. Settings
// stay in the units of the plan.
#pragma once

#include <string>
#include <vector>

#include "follow/follow.h"

namespace laywright {

// "Off plan: layer 4, diameter right is 151.620 mm, the plan has 151.940 mm, 0.080 mm more or less."
[[nodiscard]] std::string standing_words(const Followed& followed, bool inch = false);

// What most likely is off, and what the readings leave open; empty on plan.
[[nodiscard]] std::string found_words(const Plan& plan, const Followed& followed);

// "Move the right stop 0.3 mm nearer to its flange, from 0.1 mm to -0.2 mm (on its dial from 14 div to 12 div)."
[[nodiscard]] std::string set_words(const Plan& plan, const NowSet& set);

// One sentence for each setting, or one that says why there is none.
[[nodiscard]] std::vector<std::string> change_words(const Plan& plan, const Followed& followed);

// That nobody reaches in while anything turns.
[[nodiscard]] const char* change_caution();

// How far a reading is off: "on plan", "0.320 mm too much", "1.5 turns too few".
[[nodiscard]] std::string off_words(const Compared& compared, bool inch = false);

// "turn 280.1, 132 m, in layer 5".
[[nodiscard]] std::string place_words(const FitModel::Place& place);

}  // namespace laywright
