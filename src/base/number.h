// Plain numbers as a person types them.
#pragma once

#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>
#include <type_traits>

namespace laywright {

// A finite number that fills the whole text, "0.25" or "+3e-2"; none where it is anything else, "nan", "inf", or beyond
// what Number can hold.
template <class Number>
[[nodiscard]] std::optional<Number> read_number(std::string_view text) {
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  Number number{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if constexpr (std::is_floating_point_v<Number>) {
    if (!std::isfinite(number)) return std::nullopt;
  }
  return number;
}

}  // namespace laywright
