// What the head of a PNG file says, before anything is unpacked: a small file can say that it is of any size.
// PNG specification (W3C), 5.2 (signature) and 11.2.2 (IHDR, the first chunk).
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace laywright {

// Whether the bytes begin as a PNG file does.
[[nodiscard]] bool is_png(std::string_view bytes);

// Width and height, pixels, as they stand there. None where the first chunk is cut short, or another one.
[[nodiscard]] std::optional<std::array<std::uint32_t, 2>> png_size(std::string_view bytes);

}  // namespace laywright
