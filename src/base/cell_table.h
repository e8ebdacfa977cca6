// Tables as spreadsheets save them: rows of cells between semicolons, tabs or commas.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace laywright {

struct CellRow {
  int line = 0;  // on which it begins, 1-based
  std::vector<std::string> cells;

  [[nodiscard]] bool empty() const;  // all its cells are
};

// Cells without the blanks around them. Quotes are taken off ("" within them is one quote; separators and line ends within
// them belong to the cell), and so is a byte order mark. What separates is a semicolon if the first row has one outside quotes,
// else a tab, else a comma; a first line "sep=;" says it itself. Rows that are empty, and rows that start with #, are left out.
[[nodiscard]] std::vector<CellRow> read_cells(std::string_view text);

}  // namespace laywright
