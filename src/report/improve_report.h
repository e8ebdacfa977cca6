// Better settings, as text and as JSON.
#pragma once

#include <string>

#include "advise/improve.h"

namespace laywright {

[[nodiscard]] std::string improve_text(const Plan& plan, const Improvement& improvement);

// One document, format "lay-improve 1".
[[nodiscard]] std::string improve_json(const Plan& plan, const Improvement& improvement);

}  // namespace laywright
