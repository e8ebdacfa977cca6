// Issues as the window tells them: by what its fields are called, not by the keys of the plan's file.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "desk/field_rows.h"

namespace laywright {

// "Pitch", "Step 2, pitch", "Reversal"; empty for what the form does not show. `key`: of a field, a table or a step.
[[nodiscard]] std::string label_of(std::string_view key, const std::vector<FieldRow>& rows);

// What a field or table of the form has wrong, as a sentence without its full stop: "Pitch is out of range (allowed:
// above 0 mm, up to 10000 mm)". Issues of the file itself keep its words.
[[nodiscard]] std::string issue_words(const Issue& issue, const std::vector<FieldRow>& rows);

}  // namespace laywright
