// "FROM:TO" and "WxH" as they stand in options.
#pragma once

#include <optional>
#include <string_view>
#include <utility>

#include "base/number.h"

namespace laywright {

// Two numbers with `between` between them; none when it is anything else.
template <class Number>
[[nodiscard]] std::optional<std::pair<Number, Number>> read_pair(std::string_view text, char between) {
  const std::size_t at = text.find(between);
  if (at == std::string_view::npos) return std::nullopt;
  const auto first = read_number<Number>(text.substr(0, at)), second = read_number<Number>(text.substr(at + 1));
  if (!first || !second) return std::nullopt;
  return std::pair{*first, *second};
}

}  // namespace laywright
