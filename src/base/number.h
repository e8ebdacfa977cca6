// Plain numbers as a person types them.
#pragma once

#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>
#include <type_traits>

#include <fast_float/fast_float.h>  // of decimals: not every standard library reads them

namespace laywright {

// A finite number that fills the whole text, "0.25" or "+3e-2"; none where it is anything else, "nan", "inf", or beyond
// what Number can hold.
template <class Number>
[[nodiscard]] std::optional<Number> read_number(std::string_view text) {
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  Number number{};
  const char* const last = text.data() + text.size();
  if constexpr (std::is_floating_point_v<Number>) {
    const auto [end, error] = fast_float::from_chars(text.data(), last, number);
    if (error != std::errc{} || end != last || !std::isfinite(number)) return std::nullopt;
    // Too small for it.
    const std::string_view digits = text.substr(0, text.find_first_of("eE"));
    if (number == Number{} && digits.find_first_of("123456789") != std::string_view::npos) return std::nullopt;
  } else {
    const auto [end, error] = std::from_chars(text.data(), last, number);
    if (error != std::errc{} || end != last) return std::nullopt;
  }
  return number;
}

}  // namespace laywright
