// Quantities as people write them, "0.26 mm", and as the program computes with them.
//
// Inside, each dimension has one unit: length mm, force N, speed mm/s, mass kg, linear mass g/km, torque N*mm,
// stress MPa, angle rad, time s, share 1, rotation speed rpm, current A. Factors are exact (international yard
// and pound of 1959, standard gravity): what is written in one unit and in another gives the same bits.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace laywright {

enum class Dimension {
  length,
  force,
  speed,
  mass,
  linear_mass,
  torque,
  stress,
  angle,
  time,
  share,
  rotation_speed,
  current
};

// One of it = multiplier / divisor x 10^exponent inside.
struct Unit {
  std::string_view name;
  Dimension dimension;
  std::uint64_t multiplier;
  int exponent;
  std::uint64_t divisor;
};

// "length", "linear mass".
[[nodiscard]] std::string_view name_of(Dimension dimension);

// All units of a dimension, the one used inside (or the nearest to it) first. Static storage.
[[nodiscard]] std::vector<const Unit*> units_of(Dimension dimension);

// "mm, cm, m or km": the names of all units of a dimension.
[[nodiscard]] std::string unit_choices(Dimension dimension);

// By its exact name; null if there is none.
[[nodiscard]] const Unit* find_unit(std::string_view name);

// Characters of a quantity: longer than any that a person writes; keeps the exact arithmetic short.
inline constexpr std::size_t longest_quantity = 100;

struct Quantity {
  double value = 0.0;          // finite, in the unit used inside
  const Unit* unit = nullptr;  // as written
};

// A quantity, or one sentence that says what is wrong with it and what would do.
struct ParsedQuantity {
  std::optional<Quantity> quantity;
  std::string problem;
};

// Reads a number, white space or none, and a unit of that dimension.
[[nodiscard]] ParsedQuantity parse_quantity(std::string_view text, Dimension dimension);

// "12.5 mm": the fewest digits that parse_quantity reads back as exactly this value. Precondition: finite.
[[nodiscard]] std::string format_quantity(double value, const Unit& unit);

// The same for reading, in so many significant digits at most.
[[nodiscard]] std::string format_quantity(double value, const Unit& unit, std::size_t places);

}  // namespace laywright
