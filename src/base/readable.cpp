#include "base/readable.h"

#include <algorithm>

#include <fmt/format.h>

namespace laywright {
namespace {

constexpr std::size_t longest = 60;

// Length of the UTF-8 character at the front; 0 if there is none.
std::size_t character_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (lead < 0xc2 || lead > 0xf4 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xc0U) != 0x80U) return 0;
  }
  // Longer than needed, a surrogate, or beyond the last code point.
  const bool no_character = (lead == 0xe0 && byte(1) < 0xa0) || (lead == 0xed && byte(1) >= 0xa0) ||
                            (lead == 0xf0 && byte(1) < 0x90) || (lead == 0xf4 && byte(1) >= 0x90);
  return no_character ? 0 : length;
}

// U+0000 to U+001F, U+007F to U+009F.
bool is_control(std::string_view character) {
  const auto lead = static_cast<unsigned char>(character[0]);
  if (character.size() == 1) return lead < 0x20 || lead == 0x7f;
  return lead == 0xc2 && static_cast<unsigned char>(character[1]) < 0xa0;
}

}  // namespace

std::string readable(std::string_view text) {
  std::string shown;
  while (!text.empty()) {
    if (shown.size() >= longest) return shown + "...";
    const std::size_t length = character_length(text);
    if (length > 0 && !is_control(text.substr(0, length))) {
      shown += text.substr(0, length);
      text.remove_prefix(length);
    } else {
      shown += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[0]));
      text.remove_prefix(1);
    }
  }
  return shown;
}

std::string valid_utf8(std::string_view text) {
  std::string valid;
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    valid += length > 0 ? text.substr(0, length) : std::string_view("\xef\xbf\xbd");
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return valid;
}

}  // namespace laywright
