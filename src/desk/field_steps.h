// What is typed into a field: one step more or less of it, and whether it stands for itself.
#pragma once

#include <optional>
#include <string>

#include "desk/field_rows.h"

namespace laywright {

// "0.26" and one step up: "0.265". `steps` may be negative, or a part of one. In the unit that the text names, or
// else the row's. None where there is no number to step from, or where the step would leave the field's range.
// `fiber_mm`: the fiber's diameter, by which what lies across the spool is stepped; 0 where it is not known.
[[nodiscard]] std::optional<std::string> stepped(const FieldRow& row, const std::string& text, double steps,
                                                 double fiber_mm);

// The text is a value of the field's range, and none that goes on: "900 mm", not "900 m", which may become mm.
[[nodiscard]] bool stands_for_itself(const FieldRow& row, const std::string& text);

}  // namespace laywright
