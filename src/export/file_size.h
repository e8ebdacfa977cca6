// Sizes of files as a person reads them.
#pragma once

#include <string>

namespace laywright {

inline constexpr double bytes_per_megabyte = 1e6;

// "812 kB", "42 MB", "1.24 GB": in powers of ten, three digits.
[[nodiscard]] std::string size_of_file(double bytes);

}  // namespace laywright
