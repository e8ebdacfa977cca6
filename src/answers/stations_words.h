// How fine the winds of an answer are, in words.
#pragma once

#include <string>

namespace laywright {

// "These winds have 50 % of a full build's stations." `which`: "These winds".
[[nodiscard]] std::string stations_words(double fidelity, const char* which);

}  // namespace laywright
