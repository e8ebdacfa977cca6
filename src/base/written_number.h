// Numbers in a table that a person typed or a spreadsheet saved: with a decimal point or a decimal comma, and perhaps with
// thousands set apart.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace laywright {

enum class DecimalMark { untold, point, comma, both };

// What the numbers of a table tell by themselves of its decimal mark: "2,5" and "1.234,5" have a comma, "0.25" and
// "1,234,567" a point. A single mark before exactly three digits ("1,234") tells nothing, but behind a zero ("0,234"). `both`: one
// cell has this, another that.
[[nodiscard]] DecimalMark decimal_mark_of(const std::vector<std::string_view>& numbers);

struct WrittenNumber {
  std::optional<double> value;  // none: no number, or it is not clear which
  bool unclear = false;         // a number, but a mark in it may be the decimal one or set thousands apart
};

// A finite number that fills the text, in a table with that mark. What is by itself clear is read as it stands. A single mark
// before exactly three digits is the decimal one where the table has that mark; a point also where no cell tells. Thousands
// may be set apart by a point, comma, apostrophe or a blank, in whole groups of three.
[[nodiscard]] WrittenNumber read_written_number(std::string_view text, DecimalMark mark);

}  // namespace laywright
