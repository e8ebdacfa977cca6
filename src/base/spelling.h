// How words and names are spelled.
#pragma once

#include <filesystem>
#include <string>

namespace laywright {

// With a capital first letter, as at the beginning of a sentence. Of ASCII letters.
[[nodiscard]] std::string capitalised(std::string text);

// The ending of a file's name in small letters: ".pdf" of "Sheet.PDF".
[[nodiscard]] std::string ending_of(const std::filesystem::path& file);

}  // namespace laywright
