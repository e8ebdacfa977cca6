// How words and names are spelled.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace laywright {

// With a capital first letter, as at the beginning of a sentence. Of ASCII letters.
[[nodiscard]] std::string capitalised(std::string text);

[[nodiscard]] constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

// In small letters. Of ASCII letters.
[[nodiscard]] std::string lower(std::string_view text);

// Without what is blank at both ends.
[[nodiscard]] std::string_view trimmed(std::string_view text, std::string_view blank = " \t\r\n");

// The ending of a file's name in small letters: ".pdf" of "Sheet.PDF".
[[nodiscard]] std::string ending_of(const std::filesystem::path& file);

}  // namespace laywright
