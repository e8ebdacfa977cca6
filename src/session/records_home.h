// Where a person's records stand: one rule for the command and the window.
#pragma once

#include <string>

#include "records/record_book.h"

namespace laywright {

inline constexpr const char* records_variable = "LAYWRIGHT_RECORDS";

// As records_place() takes it: what was chosen; without that the variable LAYWRIGHT_RECORDS; or else records.db in the
// person's data folder. Empty where there is none of these.
[[nodiscard]] std::string records_place_text(const std::string& chosen);

// Opens the book at that place. To write into the person's own file, its folder is made.
[[nodiscard]] Result<RecordBook> open_book(const std::string& place_text, Opening opening);

}  // namespace laywright
