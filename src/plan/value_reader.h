// From a value as it stands in the text to the number of a field.
#pragma once

#include <optional>
#include <string>

#include "plan/document.h"
#include "plan/fields.h"

namespace laywright {

// The number, or what is wrong (one sentence) and what would do.
struct ReadValue {
  std::optional<double> number;
  std::string problem;
  std::string allowed;
};

[[nodiscard]] ReadValue read_value(const FieldInfo& field, const Entry& entry);

// A value for an issue: as it stands in the file, texts in quotes.
[[nodiscard]] std::string shown_value(const Entry& entry);

}  // namespace laywright
