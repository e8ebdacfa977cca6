// Bytes as text that every database holds alike (RFC 4648, section 4).
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace laywright {

[[nodiscard]] std::string to_base64(std::string_view bytes);

// None where it is anything else.
[[nodiscard]] std::optional<std::string> from_base64(std::string_view text);

}  // namespace laywright
