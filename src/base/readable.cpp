#include "base/readable.h"

#include <algorithm>

#include <fmt/format.h>

namespace laywright {
namespace {

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

bool is_continuation(char byte) { return (static_cast<unsigned char>(byte) & 0xc0U) == 0x80U; }

// Of a character in UTF-8.
char32_t code_point(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<char32_t>(static_cast<unsigned char>(character[i])); };
  if (character.size() == 1) return byte(0);
  char32_t code = byte(0) & (0x7fU >> character.size());
  for (std::size_t i = 1; i < character.size(); ++i) code = code << 6U | (byte(i) & 0x3fU);
  return code;
}

bool is_control(char32_t code) { return code < 0x20 || (code >= 0x7f && code < 0xa0); }
bool breaks_lines(char32_t code) { return code == 0x2028 || code == 0x2029; }
// Unicode's bidirectional formatting characters.
bool turns_writing(char32_t code) {
  return code == 0x061c || code == 0x200e || code == 0x200f || (code >= 0x202a && code <= 0x202e) ||
         (code >= 0x2066 && code <= 0x2069);
}

// The character at the front of `text`, or the byte that is none, is taken off; returned as it is to be shown.
std::string take_visible(std::string_view& text) {
  const std::size_t length = character_length(text);
  const std::string_view front = text.substr(0, std::max<std::size_t>(length, 1));
  text.remove_prefix(front.size());
  if (length == 0) return fmt::format("\\x{:02x}", static_cast<unsigned char>(front[0]));
  const char32_t code = code_point(front);
  if (code < 0x20) return fmt::format("\\x{:02x}", static_cast<unsigned>(code));
  // Spelled as JSON spells it, where it may stand raw.
  if (is_control(code) || breaks_lines(code) || turns_writing(code))
    return fmt::format("\\u{:04x}", static_cast<unsigned>(code));
  return std::string(front);
}

}  // namespace

std::string visible(std::string_view text) {
  std::string shown;
  while (!text.empty()) shown += take_visible(text);
  return shown;
}

std::string visible_lines(std::string_view text) {
  std::string shown;
  while (true) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    shown += visible(text.substr(0, end));
    if (end == text.size()) return shown;
    shown += '\n';
    text.remove_prefix(end + 1);
  }
}

std::string readable(std::string_view text, std::size_t most) {
  std::string shown;
  for (std::size_t count = 0; !text.empty();) {
    if (count >= most) return shown + "...";
    const std::string next = take_visible(text);
    count += character_count(next);
    shown += next;
  }
  return shown;
}

std::size_t character_count(std::string_view text) {
  return text.size() - static_cast<std::size_t>(std::count_if(text.begin(), text.end(), is_continuation));
}

std::string shortened(std::string_view text, const std::function<bool(const std::string&)>& fits) {
  if (std::string whole(text); fits(whole)) return whole;
  while (!text.empty()) {
    while (is_continuation(text.back()) && text.size() > 1) text.remove_suffix(1);
    text.remove_suffix(1);
    if (std::string front = std::string(text) + "\u2026"; fits(front)) return front;
  }
  return {};
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
