// What every issue must be: a sentence that a terminal can show.
#pragma once

#include <algorithm>

#include "base/issue.h"
#include "fuzz/require.h"

namespace laywright::fuzz {

inline void require_clean(const Issues& issues) {
  constexpr std::size_t longest_line = 1200;
  for (const Issue& issue : issues) {
    const std::string line = to_text(issue);
    require(!issue.what.empty(), "an issue says what is wrong: " + line);
    require(line.size() < longest_line, "an issue is no longer than a person reads: " + line);
    const bool shown = std::none_of(line.begin(), line.end(), [](char c) {
      const auto code = static_cast<unsigned char>(c);
      return code < 0x20 || code == 0x7f;
    });
    require(shown, "an issue has no control characters: " + line);
  }
}

}  // namespace laywright::fuzz
