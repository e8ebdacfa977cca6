#include "web/html.h"

#include <fmt/format.h>

#include "base/base64.h"
#include "base/readable.h"

namespace laywright {
namespace {

std::string row_of(std::span<const std::string> cells, std::string_view begin, std::string_view end) {
  std::string text;
  for (const std::string& cell : cells) text += fmt::format("{}{}{}", begin, html_text(cell), end);
  return fmt::format("<tr>{}</tr>", text);
}

}  // namespace

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

std::string html_row(std::span<const std::string> cells) { return row_of(cells, "<td>", "</td>"); }

std::string html_head(std::span<const std::string> cells) { return row_of(cells, "<th scope=\"col\">", "</th>"); }

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
