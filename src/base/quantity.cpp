#include "base/quantity.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/spelling.h"

namespace laywright {
namespace {

using enum Dimension;

// lbf = 0.45359237 kg x 9.80665 m/s2; the last digits of pi are past what a double holds.
constexpr std::array units = {
    Unit{"mm", length, 1, 0, 1},
    Unit{"cm", length, 1, 1, 1},
    Unit{"m", length, 1, 3, 1},
    Unit{"km", length, 1, 6, 1},
    Unit{"um", length, 1, -3, 1},
    Unit{"in", length, 254, -1, 1},
    Unit{"ft", length, 3048, -1, 1},
    Unit{"yd", length, 9144, -1, 1},
    Unit{"mil", length, 254, -4, 1},
    Unit{"N", force, 1, 0, 1},
    Unit{"cN", force, 1, -2, 1},
    Unit{"gf", force, 980665, -8, 1},
    Unit{"kgf", force, 980665, -5, 1},
    Unit{"lbf", force, 44482216152605, -13, 1},
    Unit{"mm/s", speed, 1, 0, 1},
    Unit{"m/s", speed, 1, 3, 1},
    Unit{"m/min", speed, 1, 3, 60},
    Unit{"ft/min", speed, 508, -2, 1},
    Unit{"kg", mass, 1, 0, 1},
    Unit{"g", mass, 1, -3, 1},
    Unit{"lb", mass, 45359237, -8, 1},
    Unit{"g/km", linear_mass, 1, 0, 1},
    Unit{"kg/km", linear_mass, 1, 3, 1},
    Unit{"lb/1000ft", linear_mass, 45359237, -1, 3048},
    Unit{"N*m", torque, 1, 3, 1},
    Unit{"mN*m", torque, 1, 0, 1},
    Unit{"lbf*in", torque, 1129848290276167, -13, 1},
    Unit{"MPa", stress, 1, 0, 1},
    Unit{"GPa", stress, 1, 3, 1},
    Unit{"Pa", stress, 1, -6, 1},
    Unit{"psi", stress, 44482216152605, -11, 64516},
    Unit{"kpsi", stress, 44482216152605, -8, 64516},
    Unit{"deg", angle, 314159265358979324, -17, 180},
    Unit{"rad", angle, 1, 0, 1},
    Unit{"s", Dimension::time, 1, 0, 1},
    Unit{"min", Dimension::time, 60, 0, 1},
    Unit{"h", Dimension::time, 3600, 0, 1},
    Unit{"%", share, 1, -2, 1},
    Unit{"rpm", rotation_speed, 1, 0, 1},
    Unit{"A", current, 1, 0, 1},
};

// Length of the longest front that reads as a number.
std::size_t number_length(std::string_view text) {
  for (std::size_t length_tried = text.size(); length_tried > 0; --length_tried) {
    if (parse_decimal(text.substr(0, length_tried))) return length_tried;
  }
  return 0;
}

ParsedQuantity problem(std::string text) { return {std::nullopt, std::move(text)}; }

std::string an_example(Dimension dimension) { return fmt::format("1.5 {}", units_of(dimension).front()->name); }

std::string with_article(Dimension dimension) {
  return fmt::format("{} {}", dimension == angle ? "an" : "a", name_of(dimension));
}

// Why text that does not begin with a number, or goes on after it, is no quantity.
ParsedQuantity not_a_number(std::string_view text, Dimension dimension) {
  if (text.find(',') != std::string_view::npos) {
    return problem(
        fmt::format("write the number with a decimal point and without commas, like \"{}\"", an_example(dimension)));
  }
  return problem(
      fmt::format("does not begin with a number; write a number and a unit, like \"{}\"", an_example(dimension)));
}

}  // namespace

std::string_view name_of(Dimension dimension) {
  switch (dimension) {
    case length: return "length";
    case force: return "force";
    case speed: return "speed";
    case mass: return "mass";
    case linear_mass: return "linear mass";
    case torque: return "torque";
    case stress: return "stress";
    case angle: return "angle";
    case Dimension::time: return "time";
    case share: return "share";
    case rotation_speed: return "rotation speed";
    case current: return "current";
  }
  return "";
}

std::vector<const Unit*> units_of(Dimension dimension) {
  std::vector<const Unit*> found;
  for (const Unit& unit : units) {
    if (unit.dimension == dimension) found.push_back(&unit);
  }
  return found;
}

std::string unit_choices(Dimension dimension) {
  const std::vector<const Unit*> all = units_of(dimension);
  std::string text(all.front()->name);
  for (std::size_t i = 1; i < all.size(); ++i) {
    text += fmt::format("{}{}", i + 1 == all.size() ? " or " : ", ", all[i]->name);
  }
  return text;
}

const Unit* find_unit(std::string_view name) {
  const auto* found = std::find_if(units.begin(), units.end(), [&](const Unit& u) { return u.name == name; });
  return found == units.end() ? nullptr : found;
}

ParsedQuantity parse_quantity(std::string_view text, Dimension dimension) {
  text = trimmed(text, " \t");
  if (text.empty()) {
    return problem(fmt::format("is empty; write a number and a unit, like \"{}\"", an_example(dimension)));
  }
  if (text.size() > longest_quantity) return problem(fmt::format("is longer than {} characters", longest_quantity));

  const std::size_t length_of_number = number_length(text);
  if (length_of_number == 0) return not_a_number(text, dimension);
  const std::string_view unit_name = trimmed(text.substr(length_of_number), " \t");
  if (unit_name.empty()) {
    return problem(fmt::format("has no unit; add {}", unit_choices(dimension)));
  }
  if (unit_name[0] == ',') return not_a_number(text, dimension);
  const Unit* unit = find_unit(unit_name);
  if (unit == nullptr) {
    return problem(fmt::format("has an unknown unit; use {}", unit_choices(dimension)));
  }
  if (unit->dimension != dimension) {
    return problem(fmt::format("is {}, but {} is needed; use {}", with_article(unit->dimension),
                               with_article(dimension), unit_choices(dimension)));
  }
  const Decimal number = parse_decimal(text.substr(0, length_of_number)).value_or(Decimal{});
  const std::optional<double> value = to_double(scaled(number, unit->multiplier, unit->divisor, unit->exponent));
  if (!value) return problem("is too large or too small a number to compute with");
  return {Quantity{*value, unit}, ""};
}

std::string format_quantity(double value, const Unit& unit) {
  const Decimal exact = scaled(shortest_decimal(value), unit.divisor, unit.multiplier, -unit.exponent);
  for (std::size_t places = 1; places < exact.digits.size(); ++places) {
    const Decimal candidate = rounded(exact, places);
    if (to_double(scaled(candidate, unit.multiplier, unit.divisor, unit.exponent)) == value) {
      return fmt::format("{} {}", to_text(candidate), unit.name);
    }
  }
  return fmt::format("{} {}", to_text(exact), unit.name);
}

std::string format_quantity(double value, const Unit& unit, std::size_t places) {
  const Decimal exact = scaled(shortest_decimal(value), unit.divisor, unit.multiplier, -unit.exponent);
  return fmt::format("{} {}", to_text(rounded(exact, places)), unit.name);
}

}  // namespace laywright
