#include "base/readable.h"

#include <fmt/format.h>

namespace laywright {
namespace {

constexpr std::size_t longest = 60;

// Length of the UTF-8 character at the front that may be shown as it is; 0 if there is none.
std::size_t printable_length(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text[0]);
  if (lead < 0x80) return lead >= 0x20 && lead != 0x7f ? 1 : 0;
  // C1 controls (U+0080 to U+009F) begin with 0xc2 and count as control characters.
  const bool control = lead == 0xc2 && text.size() > 1 && static_cast<unsigned char>(text[1]) < 0xa0;
  const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (control || lead < 0xc2 || lead > 0xf4 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((static_cast<unsigned char>(text[i]) & 0xc0U) != 0x80U) return 0;
  }
  return length;
}

}  // namespace

std::string readable(std::string_view text) {
  std::string shown;
  while (!text.empty()) {
    if (shown.size() >= longest) return shown + "...";
    const std::size_t length = printable_length(text);
    if (length > 0) {
      shown += text.substr(0, length);
      text.remove_prefix(length);
    } else {
      shown += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[0]));
      text.remove_prefix(1);
    }
  }
  return shown;
}

}  // namespace laywright
