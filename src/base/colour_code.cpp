#include "base/colour_code.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace laywright {

std::uint32_t code_between(std::uint32_t a, std::uint32_t b, double share) {
  std::uint32_t code = 0;
  for (const unsigned shift : {16U, 8U, 0U}) {
    const double from = a >> shift & 0xFFU, to = b >> shift & 0xFFU;
    code |= static_cast<std::uint32_t>(std::lround(from + share * (to - from))) << shift;
  }
  return code;
}

std::uint32_t code_between(std::span<const std::uint32_t> scale, double share) {
  const double at = std::clamp(share, 0.0, 1.0) * static_cast<double>(scale.size() - 1);
  const auto i = std::min(static_cast<std::size_t>(at), scale.size() - 2);
  return code_between(scale[i], scale[i + 1], at - static_cast<double>(i));
}

}  // namespace laywright
