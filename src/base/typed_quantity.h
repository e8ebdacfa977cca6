// What a person types for a quantity, where it is clear what is meant, as parse_quantity (quantity.h) reads it: files are
// held to the spelling of the plan, a person at a prompt or a field is not.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.h"

namespace laywright {

// Understood are a decimal comma ("0,26 mm"), fractions ("1 1/4 in", "1-1/4 in", "3/8 in", also as one character), the marks of
// inches and feet ("3\"", "2'"), units spelled out or in another case ("2.5 inch", "3 meters", "12 MM"), and their usual other
// spellings ("µm", "N·m", "°"). With a dimension the unit is one of it; without one, or without a unit, the number alone counts.
// A comma before exactly three digits is clear only behind a zero: "0,250", but "1,250" may be a thousand. What is not clear
// comes back as it is, without the white space around it.
[[nodiscard]] std::string as_written(std::string_view typed, std::optional<Dimension> dimension);

// parse_quantity of that; the problem is about what was typed.
[[nodiscard]] ParsedQuantity parse_typed(std::string_view typed, Dimension dimension);

}  // namespace laywright
