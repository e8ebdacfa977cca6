// Readings as the table that read_as_wound() reads (advise/as_wound.h).
#pragma once

#include <string>

#include "advise/as_wound.h"

namespace laywright {

// Reads back as the same readings, but for the last digit of counted lengths, which stand in m.
[[nodiscard]] std::string readings_csv(const AsWound& wound);

}  // namespace laywright
