#include "web/html.h"

#include <fmt/format.h>

#include "base/base64.h"
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
  return fmt::format("data:{};base64,{}", media_type, to_base64(bytes));
}

}  // namespace laywright
