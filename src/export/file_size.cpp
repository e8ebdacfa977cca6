#include "export/file_size.h"

#include <array>

#include <fmt/format.h>

#include "base/quantity_text.h"

namespace laywright {

std::string size_of_file(double bytes) {
  constexpr std::array<const char*, 4> units{"bytes", "kB", "MB", "GB"};
  std::size_t unit = 0;
  while (unit + 1 < units.size() && bytes >= 999.5) {
    bytes /= 1000.0;
    ++unit;
  }
  const int decimals = unit == 0 || bytes >= 99.95 ? 0 : bytes < 9.995 ? 2 : 1;
  return fmt::format("{} {}", figure(bytes, decimals), units[unit]);
}

}  // namespace laywright
