// An issue: something that keeps an input from being used, or that its owner should know.
#pragma once

#include <string>
#include <vector>

namespace laywright {

enum class Severity { error, warning };

// Everything a person needs to find and mend what is wrong. Fields that do not apply stay empty (line: 0).
struct Issue {
  Severity severity = Severity::error;
  std::string file;     // as the person named it
  int line = 0;         // 1-based
  std::string key;      // dotted key path, "traverse.reversal.kind"
  std::string value;    // as written
  std::string allowed;  // the range or the choices, in words
  std::string what;     // one sentence: what is wrong and what to do
};

using Issues = std::vector<Issue>;

// True if any of them is an error.
[[nodiscard]] bool has_error(const Issues& issues);

// One line of text: "file:line: key = value: what (allowed: ...)".
[[nodiscard]] std::string to_text(const Issue& issue);

}  // namespace laywright
