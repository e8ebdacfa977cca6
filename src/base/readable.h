// Text from a file or a person, made fit to be shown in a terminal or a window.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

namespace laywright {

// One line that does to a terminal nothing but stand there: control characters, line breaks among them, marks that turn
// the direction of writing, and bytes that are not UTF-8 are spelled out, as "\x1b" and "\u202e".
[[nodiscard]] std::string visible(std::string_view text);

// The same for text of several lines: line feeds stay. A JSON document is the same document after it.
[[nodiscard]] std::string visible_lines(std::string_view text);

// visible(), and no longer than `most` characters or so ("..." at the end of what was longer).
[[nodiscard]] std::string readable(std::string_view text, std::size_t most = 60);

// Characters of a text in UTF-8.
[[nodiscard]] std::size_t character_count(std::string_view text);

// The text where it fits, else as much of its front as does with an ellipsis behind it; empty where not even that fits.
[[nodiscard]] std::string shortened(std::string_view text, const std::function<bool(const std::string&)>& fits);

// The same text in which bytes that are not UTF-8 have become U+FFFD, the replacement character.
[[nodiscard]] std::string valid_utf8(std::string_view text);

}  // namespace laywright
