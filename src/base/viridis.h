// Viridis (S. van der Walt, N. Smith, 2015; CC0): a scale of colours that colour-blind people can tell apart.
#pragma once

#include <cstdint>

namespace laywright {

// 0xrrggbb; share 0 to 1, clamped.
[[nodiscard]] std::uint32_t viridis_code(double share);

}  // namespace laywright
