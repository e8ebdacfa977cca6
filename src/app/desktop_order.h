// The order over spools that is open, as JSON: for tests that drive the window from outside.
#pragma once

#include <nlohmann/json.hpp>

#include "session/open_order.h"

namespace laywright {

[[nodiscard]] nlohmann::ordered_json order_json(const OpenOrder& open, bool inch);

// A file, or a set, on its way.
[[nodiscard]] nlohmann::ordered_json saving_json(const FileSaving& saving);

}  // namespace laywright
