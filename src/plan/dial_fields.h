// The keys of a dial and of a counter as fields: kind, unit, range, and the member that holds each.
#pragma once

#include <string_view>
#include <vector>

#include "plan/dial.h"
#include "plan/fields.h"

namespace laywright {

// A plain number.
[[nodiscard]] FieldInfo number_key(std::string_view key, Range range);
// An amount of what the dial sets, which is what that field of the plan holds.
[[nodiscard]] FieldInfo value_key(std::string_view key, const FieldInfo& of);

// All but unit and points.
[[nodiscard]] std::vector<Field<Dial>> fields_of_dial(const FieldInfo& of);
[[nodiscard]] std::vector<Field<Counter>> fields_of_counter();

inline constexpr double greatest_reading = 1e9;

}  // namespace laywright
