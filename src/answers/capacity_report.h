// How much fits, as text and as JSON.
#pragma once

#include <string>

#include "advise/capacity.h"

namespace laywright {

[[nodiscard]] std::string capacity_text(const Plan& plan, const Capacity& capacity);

// One document, format "lay-capacity 1".
[[nodiscard]] std::string capacity_json(const Plan& plan, const Capacity& capacity);

}  // namespace laywright
