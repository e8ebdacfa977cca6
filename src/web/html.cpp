#include "web/html.h"

#include <cstdint>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {

std::string html_text(std::string_view text) {
  std::string out;
  for (const char c : valid_utf8(text)) {
    switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      case '\'': out += "&#39;"; break;
      default: out += c;
    }
  }
  return out;
}

std::string json_in_html(const std::string& json) {
  std::string out;
  for (const char c : json) {
    if (c == '<') {
      out += "\\u003c";
    } else {
      out += c;
    }
  }
  return out;
}

std::string data_uri(std::string_view media_type, std::string_view bytes) {
  constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out = fmt::format("data:{};base64,", media_type);
  out.reserve(out.size() + bytes.size() * 4 / 3 + 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::string_view group = bytes.substr(i, 3);
    std::uint32_t bits = 0;
    for (std::size_t k = 0; k < 3; ++k) {
      const std::uint32_t byte = k < group.size() ? static_cast<std::uint8_t>(group[k]) : 0U;
      bits = bits << 8U | byte;
    }
    for (std::size_t k = 0; k < 4; ++k) {
      out += k <= group.size() ? letters[bits >> (18U - 6U * static_cast<unsigned>(k)) & 63U] : '=';
    }
  }
  return out;
}

}  // namespace laywright
