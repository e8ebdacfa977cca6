// Decimal numbers as people write them, scaled without rounding, so that 6 in and 152.4 mm become the same bits.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace laywright {

// digits x 10^exponent, negative or not. digits holds '0' to '9' only, at least one, no leading zeros but for zero.
struct Decimal {
  bool negative = false;
  std::string digits = "0";
  int exponent = 0;

  [[nodiscard]] bool zero() const { return digits == "0"; }
};

// "12", "-0.5", "+.5", "3.", "1e-3"; nothing before or after. None for anything else. Exponents beyond +-9999
// are cut to that: far outside what a double holds, on either side.
[[nodiscard]] std::optional<Decimal> parse_decimal(std::string_view text);

// The shortest decimal that reads back as this double. Precondition: finite.
[[nodiscard]] Decimal shortest_decimal(double value);

// number x multiplier / divisor x 10^exponent: exact, or cut after 40 digits where the division does not end.
// Precondition: multiplier and divisor from 1 to 10^18.
[[nodiscard]] Decimal scaled(const Decimal& number, std::uint64_t multiplier, std::uint64_t divisor, int exponent);

// Rounded half up to so many digits, trailing zeros dropped. Precondition: places >= 1.
[[nodiscard]] Decimal rounded(const Decimal& number, std::size_t places);

// The nearest double; none if the number is too large, or so small that it would be taken for zero.
[[nodiscard]] std::optional<double> to_double(const Decimal& number);

// Plain ("0.00025", "25000") within reason, with an exponent ("2.5e-9") beyond.
[[nodiscard]] std::string to_text(const Decimal& number);

}  // namespace laywright
