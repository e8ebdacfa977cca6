#include "figures/table_rows.h"

#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace laywright {

void TableRows::add_decimal(double value, int decimals) {
  constexpr std::array<std::uint64_t, 7> powers{1, 10, 100, 1'000, 10'000, 100'000, 1'000'000};
  constexpr double most = 9e12;  // times a million still is a whole number of 64 bits
  if (!(std::abs(value) < most)) {
    bytes_ += fmt::format("{:.{}f},", value, decimals);
    return;
  }
  const std::uint64_t power = powers[static_cast<std::size_t>(decimals)];
  const auto scaled = static_cast<std::uint64_t>(std::abs(value) * static_cast<double>(power) + 0.5);
  std::array<char, 32> text;
  char* at = text.data();
  if (value < 0.0 && scaled > 0) *at++ = '-';
  at = std::to_chars(at, text.data() + text.size(), scaled / power).ptr;
  if (decimals > 0) *at++ = '.';
  std::uint64_t rest = scaled % power;
  for (int place = decimals - 1; place >= 0; --place, rest /= 10) at[place] = static_cast<char>('0' + rest % 10);
  at += decimals;
  *at++ = ',';
  bytes_.append(text.data(), at);
}

void TableRows::add_whole(std::uint64_t value) {
  std::array<char, 24> text;
  char* const end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
  bytes_.append(text.data(), end);
  bytes_ += ',';
}

}  // namespace laywright
