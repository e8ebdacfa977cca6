// Colours as 0xrrggbb, sRGB of 8 bits a channel, for what speaks of colours and draws nothing.
#pragma once

#include <cstdint>
#include <span>

namespace laywright {

// From a to b, share 0 to 1.
[[nodiscard]] std::uint32_t code_between(std::uint32_t a, std::uint32_t b, double share);

// Along a scale of colours at even shares, 0 to 1, clamped. Precondition: at least two.
[[nodiscard]] std::uint32_t code_between(std::span<const std::uint32_t> scale, double share);

}  // namespace laywright
