// Text from a file, made fit to be shown in a terminal or a window.
#pragma once

#include <string>
#include <string_view>

namespace laywright {

// Control characters and bytes that are not UTF-8 as "\x1b", and no longer than 60 characters or so ("..." at the
// end of what was longer).
[[nodiscard]] std::string readable(std::string_view text);

// The same text in which bytes that are not UTF-8 have become U+FFFD, the replacement character.
[[nodiscard]] std::string valid_utf8(std::string_view text);

}  // namespace laywright
