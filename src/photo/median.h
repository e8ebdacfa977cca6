// The value in the middle. Inside the folder only.
#pragma once

#include <algorithm>
#include <vector>

namespace laywright {

// Of an even count the upper one of both. Precondition: not empty.
[[nodiscard]] inline double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

}  // namespace laywright
