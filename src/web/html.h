// Text put into HTML.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace laywright {

// As the text of an element or of an attribute in quotes. What is not UTF-8 becomes U+FFFD.
[[nodiscard]] std::string html_text(std::string_view text);

// A row of a table; a row of heads.
[[nodiscard]] std::string html_row(std::span<const std::string> cells);
[[nodiscard]] std::string html_head(std::span<const std::string> cells);

// The inside of a script element of type application/json: a text that JSON.parse reads back, in plain ASCII and without
// "<", so that nothing in it ends the element or opens a comment.
[[nodiscard]] std::string json_in_html(const std::string& json);

// "data:image/png;base64,...".
[[nodiscard]] std::string data_uri(std::string_view media_type, std::string_view bytes);

}  // namespace laywright
