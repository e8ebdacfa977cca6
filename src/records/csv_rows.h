// Comma-separated values as spreadsheets write them (RFC 4180): fields in quotes may hold commas, quotes twice, and lines.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace laywright {

struct CsvRow {
  int line = 0;  // on which it begins
  std::vector<std::string> cells;
};

// All rows but empty lines. A byte order mark is passed over. Errors with `file` and line: a quote that is never closed, or that
// stands within a field or is followed by one.
[[nodiscard]] Result<std::vector<CsvRow>> read_csv_rows(std::string_view text, const std::string& file);

}  // namespace laywright
