// What is refused before the parser sees it: a parser that recurses must not be fed without bounds.
#pragma once

#include <optional>
#include <string_view>

#include "base/issue.h"

namespace laywright {

// An error if the text is too large, holds zero bytes, or nests brackets or dotted keys deeper than 16. The
// issue's file is left empty; `what` says what the text should be.
[[nodiscard]] std::optional<Issue> refuse_document(std::string_view text, std::string_view what);

}  // namespace laywright
