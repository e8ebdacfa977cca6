// Names as words.
#pragma once

#include <string>

namespace laywright {

// "flange_gap" as a person reads it: "Flange gap".
[[nodiscard]] std::string spoken(std::string name);

}  // namespace laywright
