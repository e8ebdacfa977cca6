// Figures and quantities as a person reads them, metric or in the inch system: the one place where a number gets its digits and
// its unit, for window, page, paper and text alike. What a plan itself says is written by quantity.h. Text is ASCII but
// for degrees and powers.
#pragma once

#include <concepts>
#include <string>
#include <string_view>

namespace laywright {

// Rounded to `decimals`, thousands apart: "12,345.7". "-" when not finite.
[[nodiscard]] std::string figure(double value, int decimals);

// The same with its sign: "+0.12", "-3.0".
[[nodiscard]] std::string signed_figure(double value, int decimals);

// So many digits that count, never an exponent: "5.20", "12,346".
[[nodiscard]] std::string figure_with(double value, int digits);

// The same without trailing zeros: "24.99", "0.245".
[[nodiscard]] std::string short_figure(double value, int digits);

// At most six significant digits, no trailing zeros: a setting as its owner would write it, "0.26".
[[nodiscard]] std::string setting(double value);

// "1 turn", "1.5 turns", "0 turns": a figure as it is told, and what it counts, which gets an s for more.
[[nodiscard]] std::string counted(std::string_view figure, std::string_view what);
// The same of a whole number: "1 layer", "1,234 layers".
template <std::integral Count>
[[nodiscard]] std::string counted(Count count, std::string_view what) {
  return counted(figure(static_cast<double>(count), 0), what);
}

// What a figure is; it decides the units.
enum class Amount {
  small_length,  // mm, in
  fiber_length,  // m, ft
  force,         // N, lbf
  torque,        // N m, lbf in
  guide_speed,   // mm/s, in/s
  line_speed,    // m/min, ft/min
  pressure,      // MPa, psi
  mass,          // kg, lb
  inertia,       // kg cm2, lb in2
};

// `value` in the metric unit above; `decimals` of the metric figure: one in inches has as many digits that count.
[[nodiscard]] const char* unit_in(Amount amount, bool inch);
[[nodiscard]] double value_in(Amount amount, double value, bool inch);
[[nodiscard]] int decimals_in(Amount amount, int decimals, bool inch);
// Without its unit, for tables and axes.
[[nodiscard]] std::string figure_in(Amount amount, double value, int decimals, bool inch);
// "203.42 mm", "8.0087 in".
[[nodiscard]] std::string amount_text(Amount amount, double value, int decimals, bool inch);

// Of a part or a place on the spool, to a thousandth of a mm: "203.420 mm", "8.00866 in".
[[nodiscard]] std::string size_text(double mm, bool inch);
// The same without trailing zeros, to `decimals` of mm: "12.7 mm", "0.5 in".
[[nodiscard]] std::string short_size_text(double mm, int decimals, bool inch);

// About as large: "0.21 mm", "4.3 mm", "12 mm", two or three digits that count; "0.0083 in".
[[nodiscard]] std::string rough_size_text(double mm, bool inch);

// Of fiber as a counter shows it, to a tenth of a metre: "830.1 m", "1.2400 km", "2,720.0 ft".
[[nodiscard]] std::string fiber_length_text(double mm, bool inch);
// Of fiber in words, with so many digits that count: "20 km", "500 m", "1,640.4 ft".
[[nodiscard]] std::string fiber_text(double mm, int digits, bool inch);

// In the metric unit that fits: "0.245 mm", "812.4 m", "25 km".
[[nodiscard]] std::string length_text(double mm);

// "42 s", "6 min 40 s", "1 h 05 min".
[[nodiscard]] std::string duration_text(double seconds);

// A share of 1: "83.9 %".
[[nodiscard]] std::string percent_text(double share, int decimals);
// "12.5\u00B0".
[[nodiscard]] std::string degrees_text(double degrees, int decimals);

}  // namespace laywright
