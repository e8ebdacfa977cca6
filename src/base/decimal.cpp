#include "base/decimal.h"

#include <algorithm>
#include <cmath>
#include <system_error>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include "base/spelling.h"

namespace laywright {
namespace {

constexpr int exponent_limit = 9999;
constexpr std::size_t division_digits = 40;

std::uint64_t value_of(char c) { return static_cast<std::uint64_t>(c - '0'); }
char digit_of(std::uint64_t value) { return static_cast<char>('0' + value); }

// Takes the run of digits at the front.
std::string_view take_digits(std::string_view& text) {
  const auto end = std::find_if_not(text.begin(), text.end(), is_digit);
  const auto length = static_cast<std::size_t>(end - text.begin());
  const std::string_view run = text.substr(0, length);
  text.remove_prefix(length);
  return run;
}

// Takes "e-3" at the front; 0 where there is none, none where it is broken off.
std::optional<int> take_exponent(std::string_view& text) {
  if (text.empty() || (text[0] != 'e' && text[0] != 'E')) return 0;
  text.remove_prefix(1);
  const bool minus = !text.empty() && text[0] == '-';
  if (minus || (!text.empty() && text[0] == '+')) text.remove_prefix(1);
  const std::string_view run = take_digits(text);
  if (run.empty()) return std::nullopt;
  int exponent = 0;
  for (const char c : run) exponent = std::min(exponent_limit, exponent * 10 + static_cast<int>(value_of(c)));
  return minus ? -exponent : exponent;
}

void drop_leading_zeros(std::string& digits) {
  digits.erase(0, std::min(digits.find_first_not_of('0'), digits.size() - 1));
}

void drop_trailing_zeros(Decimal& number) {
  while (number.digits.size() > 1 && number.digits.back() == '0') {
    number.digits.pop_back();
    ++number.exponent;
  }
  if (number.zero()) number.exponent = 0;
}

std::string times(const std::string& digits, std::uint64_t factor) {
  std::string product;
  std::uint64_t carry = 0;
  for (auto it = digits.rbegin(); it != digits.rend(); ++it) {
    carry += value_of(*it) * factor;
    product += digit_of(carry % 10);
    carry /= 10;
  }
  for (; carry > 0; carry /= 10) product += digit_of(carry % 10);
  std::reverse(product.begin(), product.end());
  drop_leading_zeros(product);
  return product;
}

// Long division, carried on past the last digit until it ends or division_digits are found.
void divide(Decimal& number, std::uint64_t divisor) {
  std::string quotient;
  std::uint64_t rest = 0;
  for (const char c : number.digits) {
    rest = rest * 10 + value_of(c);
    quotient += digit_of(rest / divisor);
    rest %= divisor;
  }
  drop_leading_zeros(quotient);
  while (rest > 0 && quotient.size() < division_digits) {
    rest *= 10;
    if (quotient == "0") quotient.clear();
    quotient += digit_of(rest / divisor);
    rest %= divisor;
    --number.exponent;
  }
  number.digits = quotient;
}

}  // namespace

std::optional<Decimal> parse_decimal(std::string_view text) {
  Decimal number;
  if (!text.empty() && (text[0] == '-' || text[0] == '+')) {
    number.negative = text[0] == '-';
    text.remove_prefix(1);
  }
  const std::string_view whole = take_digits(text);
  std::string_view fraction;
  if (!text.empty() && text[0] == '.') {
    text.remove_prefix(1);
    fraction = take_digits(text);
  }
  if (whole.empty() && fraction.empty()) return std::nullopt;
  const std::optional<int> exponent = take_exponent(text);
  if (!exponent || !text.empty()) return std::nullopt;
  number.digits = std::string(whole) + std::string(fraction);
  number.exponent = *exponent - static_cast<int>(fraction.size());
  drop_leading_zeros(number.digits);
  drop_trailing_zeros(number);
  return number;
}

// By libraries: not every standard library can convert floating point numbers.
Decimal shortest_decimal(double value) { return parse_decimal(fmt::format("{}", value)).value_or(Decimal{}); }

Decimal scaled(const Decimal& number, std::uint64_t multiplier, std::uint64_t divisor, int exponent) {
  Decimal result = number;
  result.digits = times(number.digits, multiplier);
  result.exponent += exponent;
  divide(result, divisor);
  drop_trailing_zeros(result);
  return result;
}

Decimal rounded(const Decimal& number, std::size_t places) {
  if (number.digits.size() <= places) return number;
  Decimal result = number;
  result.exponent += static_cast<int>(number.digits.size() - places);
  result.digits.resize(places);
  if (number.digits[places] >= '5') {
    auto digit = result.digits.rbegin();
    while (digit != result.digits.rend() && *digit == '9') *digit++ = '0';
    if (digit == result.digits.rend()) {
      result.digits.insert(0, 1, '1');
    } else {
      ++*digit;
    }
  }
  drop_trailing_zeros(result);
  return result;
}

std::optional<double> to_double(const Decimal& number) {
  const std::string text = fmt::format("{}{}e{}", number.negative ? "-" : "", number.digits, number.exponent);
  double value = 0.0;
  const auto [end, error] = fast_float::from_chars(text.data(), text.data() + text.size(), value);
  // Too large is infinite, too small zero.
  if (error != std::errc() || !std::isfinite(value) || (value == 0.0 && !number.zero())) return std::nullopt;
  return value;
}

std::string to_text(const Decimal& number) {
  const std::string sign = number.negative ? "-" : "";
  const int size = static_cast<int>(number.digits.size());
  const int point = size + number.exponent;  // digits before the decimal point
  if (number.zero()) return sign + "0";
  if (point > 15 || point < -5) {
    const std::string rest = number.digits.substr(1);
    return fmt::format("{}{}{}{}e{}", sign, number.digits[0], rest.empty() ? "" : ".", rest, point - 1);
  }
  if (point <= 0)
    return fmt::format("{}0.{}{}", sign, std::string(static_cast<std::size_t>(-point), '0'), number.digits);
  if (number.exponent >= 0) {
    return fmt::format("{}{}{}", sign, number.digits, std::string(static_cast<std::size_t>(number.exponent), '0'));
  }
  const auto split = static_cast<std::size_t>(point);
  return fmt::format("{}{}.{}", sign, number.digits.substr(0, split), number.digits.substr(split));
}

}  // namespace laywright
