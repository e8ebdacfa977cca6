// Payoff in words: the same in the command, the JSON document and the window.
#pragma once

#include <string>

#include "payoff/payoff.h"

namespace laywright {

// How hard fiber is to be drawn off, in times the pull of winding: "3.20". "over 1,000" beyond the highest limit that a plan can set,
// where an estimate by exponentials of friction is no figure any more, and the fiber breaks or stays.
[[nodiscard]] std::string multiple_figure(double multiple);

// "from the side", "over the left end".
[[nodiscard]] std::string words_for(DrawOff way);

// "Drawn off from the side, nothing catches: the hardest place needs 1.01 times the pull of winding, the limit is 1.5."
// "Drawn off over the left end, the fiber catches in 767 places, 7.5 m of 25 km: the hardest needs ..."
[[nodiscard]] std::string payoff_line(const PayoffRun& run, double length_mm);

// "3 catches: 1 grave, 2 worth a look", "no catch".
[[nodiscard]] std::string count_words(const PayoffRun& run);

// "jammed in a slit": the short form of what holds it.
[[nodiscard]] const char* short_words(HeldBy by);

// A catch, for somebody in their first week: where, how far from the outer end, what holds it, how hard it is to be drawn.
[[nodiscard]] std::string sentence_of(const PayoffCatch& caught, const Plan& plan);

// What the figures rest on.
[[nodiscard]] std::string basis_of(const PayoffRun& run);

}  // namespace laywright
