// Turns a parser's complaint into what the person should mend.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/issue.h"

namespace laywright {

inline constexpr std::size_t most_told = 100;  // issues of one file

// The issues (at least one, all errors) for a text that is not TOML: `complaint` is the parser's sentence, `line`
// where it stands, `what` what the text should be. If that line holds a value without its quotes, all such lines of the text are told at once.
[[nodiscard]] Issues explain_syntax(std::string_view text, int line, std::string_view complaint,
                                    const std::string& file, std::string_view what);

}  // namespace laywright
