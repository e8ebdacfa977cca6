// The text of a lay plan as a tree of values that know where they stand, apart from what the keys mean.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace laywright {

// A value, table or list of a TOML document.
struct Entry {
  enum class Kind { table, list, text, number, whole, truth, other };

  Kind kind = Kind::table;
  std::string key;            // in its table; empty for the document and for items of a list
  std::string text;           // what a text says, otherwise as written; empty for tables and lists
  double number = 0.0;        // of number and whole; may be infinite or NaN
  int line = 0;               // 1-based, of the key; of the value where there is no key
  std::size_t key_begin = 0;  // bytes from the start of the text
  std::size_t begin = 0;      // of the value; of a table with a header: of its first header
  std::size_t end = 0;
  bool is_inline = false;       // table or list written in braces or brackets
  bool has_header = false;      // table with a [header] of its own
  std::vector<Entry> children;  // in the order of the text

  // Null if there is none of that key.
  [[nodiscard]] const Entry* child(std::string_view name) const;
};

// The greatest text that is read, bytes; a lay plan is a few thousand.
inline constexpr std::size_t largest_plan_bytes = 1'000'000;

// What texts of this kind are called in issues.
inline constexpr std::string_view a_plan = "a lay plan";

// Parses TOML 1.0. Errors: too large, not text, nested too deep, not TOML. `file` is named in the issues, and `what`
// says what it should be.
[[nodiscard]] Result<Entry> read_document(std::string_view text, const std::string& file,
                                          std::string_view what = a_plan);

}  // namespace laywright
