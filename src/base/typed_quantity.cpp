#include "base/typed_quantity.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/number.h"
#include "base/spelling.h"

namespace laywright {
namespace {

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
  return text;
}

// Characters that stand for several.
std::string spelled_out(std::string_view typed) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 14> signs{{{"½", " 1/2"},
                                                                                 {"¼", " 1/4"},
                                                                                 {"¾", " 3/4"},
                                                                                 {"⅛", " 1/8"},
                                                                                 {"⅜", " 3/8"},
                                                                                 {"⅝", " 5/8"},
                                                                                 {"⅞", " 7/8"},
                                                                                 {"\xc2\xa0", " "},  // no break
                                                                                 {"µ", "u"},         // micro sign
                                                                                 {"μ", "u"},         // Greek letter
                                                                                 {"·", "*"},
                                                                                 {"″", "\""},
                                                                                 {"′", "'"},
                                                                                 {"−", "-"}}};
  std::string text(typed);
  for (const auto& [sign, words] : signs) text = replaced(std::move(text), sign, words);
  return text;
}

// Where the number ends: at the first character that belongs to none.
std::size_t end_of_number(std::string_view text) {
  std::size_t end = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool exponent = (text[i] == 'e' || text[i] == 'E') && i > 0 && is_digit(text[i - 1]) &&
                          i + 1 < text.size() && (is_digit(text[i + 1]) || text[i + 1] == '-' || text[i + 1] == '+');
    const bool of_number =
        is_digit(text[i]) || exponent || std::string_view("+-.,/ \t").find(text[i]) != std::string_view::npos;
    if (!of_number) break;
    end = i + 1;
  }
  return end;
}

std::optional<std::string> with_point(std::string_view number) {
  const std::size_t comma = number.find(',');
  if (comma == std::string_view::npos || number.find_first_of(",.", comma + 1) != std::string_view::npos ||
      number.find('.') != std::string_view::npos)
    return std::nullopt;
  const std::string_view before = number.substr(0, comma);
  const std::string_view digits = before.substr(before.find_first_not_of("+-") == 1 ? 1 : 0);
  const std::string_view after = number.substr(comma + 1);
  const bool all_digits = std::all_of(digits.begin(), digits.end(), is_digit) &&
                          std::all_of(after.begin(), after.end(), is_digit) && !digits.empty() && !after.empty();
  if (!all_digits || (after.size() == 3 && digits != "0")) return std::nullopt;
  return fmt::format("{}.{}", before, after);
}

// "1 1/4", "1-1/4", "3/8": sixty-fourths and all others, exact as far as a decimal can be.
std::optional<std::string> with_fraction(std::string_view number) {
  const bool minus = !number.empty() && number[0] == '-';
  if (minus) number = trimmed(number.substr(1));
  const std::size_t slash = number.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const std::string_view front = trimmed(number.substr(0, slash));
  const std::size_t gap = front.find_last_of(" \t-");
  const std::string_view whole =
      gap == std::string_view::npos ? std::string_view("0") : trimmed(front.substr(0, gap));
  const auto ones = read_number<std::uint32_t>(whole);
  const auto part = read_number<std::uint32_t>(front.substr(gap == std::string_view::npos ? 0 : gap + 1));
  const auto of = read_number<std::uint32_t>(trimmed(number.substr(slash + 1)));
  if (!ones || !part || !of || *of == 0) return std::nullopt;
  const std::uint64_t parts = std::uint64_t{*ones} * *of + *part;
  Decimal all;
  all.negative = minus && parts > 0;
  all.digits = std::to_string(parts);
  return to_text(rounded(scaled(all, 1, *of, 0), 20));
}

// The unit of that dimension which the word means; empty where it means none.
std::string_view meant_unit(std::string_view word, Dimension dimension) {
  const std::string wanted = lower(word);
  for (const Unit* unit : units_of(dimension)) {
    if (lower(unit->name) == wanted) return unit->name;
  }
  constexpr std::array<std::pair<std::string_view, std::string_view>, 43> names{
      {{"\"", "in"},         {"''", "in"},          {"inch", "in"},       {"inches", "in"},
       {"in.", "in"},        {"'", "ft"},           {"foot", "ft"},       {"feet", "ft"},
       {"yard", "yd"},       {"yards", "yd"},       {"mils", "mil"},      {"thou", "mil"},
       {"micron", "um"},     {"microns", "um"},     {"millimeter", "mm"}, {"millimeters", "mm"},
       {"millimetre", "mm"}, {"millimetres", "mm"}, {"meter", "m"},       {"meters", "m"},
       {"metre", "m"},       {"metres", "m"},       {"kilometer", "km"},  {"kilometers", "km"},
       {"kilometre", "km"},  {"kilometres", "km"},  {"\xc2\xb0", "deg"},  {"degree", "deg"},
       {"degrees", "deg"},   {"sec", "s"},          {"second", "s"},      {"seconds", "s"},
       {"minute", "min"},    {"minutes", "min"},    {"hour", "h"},        {"hours", "h"},
       {"newton", "N"},      {"percent", "%"},      {"nm", "N*m"},        {"mnm", "mN*m"},
       {"lbs", "lb"},        {"r/min", "rpm"},      {"amp", "A"}}};
  for (const auto& [name, unit] : names) {
    if (name == wanted && find_unit(unit)->dimension == dimension) return unit;
  }
  return {};
}

}  // namespace

std::string as_written(std::string_view typed, std::optional<Dimension> dimension) {
  const std::string original(trimmed(typed));
  if (original.size() > longest_quantity) return original;
  const std::string text = spelled_out(original);
  const std::string_view all = trimmed(text);
  const std::size_t end = end_of_number(all);
  std::string number(trimmed(all.substr(0, end)));
  const std::string_view word = trimmed(all.substr(end));
  if (number.empty()) return original;
  if (const auto fraction = with_fraction(number)) {
    number = *fraction;
  } else if (const auto point = with_point(number)) {
    number = *point;
  }
  if (!parse_decimal(number)) return original;
  if (word.empty()) return number;
  if (!dimension) return original;
  const std::string_view unit = meant_unit(word, *dimension);
  // Another dimension's unit is told by who reads it.
  return fmt::format("{} {}", number, unit.empty() ? word : unit);
}

ParsedQuantity parse_typed(std::string_view typed, Dimension dimension) {
  return parse_quantity(as_written(typed, dimension), dimension);
}

}  // namespace laywright
