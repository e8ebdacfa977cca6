#include "base/quantity_text.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/inch.h"
#include "base/round_figure.h"
#include "base/units.h"

namespace laywright {
namespace {

// "-1234567.8" -> "-1,234,567.8"
std::string with_thousands_apart(std::string digits) {
  const std::size_t first = digits.find_first_of("0123456789");
  const std::size_t point = std::min(digits.find('.'), digits.size());
  for (std::size_t at = point; at > first + 3;) {
    at -= 3;
    digits.insert(at, 1, ',');
  }
  return digits;
}

std::string without_trailing_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string with_unit(const std::string& number, const char* unit) { return fmt::format("{} {}", number, unit); }

struct Pair {
  const char* metric;
  const char* inch;
  double inch_per_metric;  // exact by the yard and pound of 1959 and standard gravity
};

Pair pair_of(Amount amount) {
  switch (amount) {
    case Amount::small_length: return {"mm", "in", 1.0 / mm_per_inch};
    case Amount::fiber_length: return {"m", "ft", 1.0 / m_per_foot};
    case Amount::force: return {"N", "lbf", 1.0 / newtons_per_pound_force};
    case Amount::torque: return {"N m", "lbf in", 1000.0 / (newtons_per_pound_force * mm_per_inch)};
    case Amount::guide_speed: return {"mm/s", "in/s", 1.0 / mm_per_inch};
    case Amount::line_speed: return {"m/min", "ft/min", 1.0 / m_per_foot};
    case Amount::pressure: return {"MPa", "psi", mm_per_inch * mm_per_inch / newtons_per_pound_force};
    case Amount::mass: return {"kg", "lb", 1.0 / kg_per_pound};
    case Amount::inertia:
      return {"kg cm\u00B2", "lb in\u00B2", 1e-4 / (kg_per_pound * 1e-6 * mm_per_inch * mm_per_inch)};
  }
  return {"", "", 1.0};
}

}  // namespace

std::string figure(double value, int decimals) {
  if (!std::isfinite(value)) return "-";
  std::string digits = fmt::format("{:.{}f}", value, decimals);
  const bool zero = digits.find_first_of("123456789") == std::string::npos;
  if (zero && digits.front() == '-') digits.erase(0, 1);
  return with_thousands_apart(std::move(digits));
}

std::string signed_figure(double value, int decimals) {
  const std::string text = figure(value, decimals);
  return text.front() == '-' ? text : '+' + text;
}

std::string figure_with(double value, int digits) { return figure(value, decimals_for(std::abs(value), digits)); }

std::string short_figure(double value, int digits) { return without_trailing_zeros(figure_with(value, digits)); }

std::string setting(double value) { return fmt::format("{:.6g}", value == 0.0 ? 0.0 : value); }

std::string counted(std::string_view figure, std::string_view what) {
  return fmt::format("{} {}{}", figure, what, figure == "1" ? "" : "s");
}

const char* unit_in(Amount amount, bool inch) { return inch ? pair_of(amount).inch : pair_of(amount).metric; }

double value_in(Amount amount, double value, bool inch) {
  return inch ? value * pair_of(amount).inch_per_metric : value;
}

// As fine in the other unit as the metric figure is: a unit that is smaller has fewer decimals.
int decimals_in(Amount amount, int decimals, bool inch) {
  if (!inch) return decimals;
  const int shift = static_cast<int>(std::ceil(-std::log10(pair_of(amount).inch_per_metric) - 1e-9));
  return std::clamp(decimals + shift, 0, 8);
}

std::string figure_in(Amount amount, double value, int decimals, bool inch) {
  return figure(value_in(amount, value, inch), decimals_in(amount, decimals, inch));
}

std::string amount_text(Amount amount, double value, int decimals, bool inch) {
  return with_unit(figure_in(amount, value, decimals, inch), unit_in(amount, inch));
}

std::string size_text(double mm, bool inch) { return amount_text(Amount::small_length, mm, 3, inch); }

std::string short_size_text(double mm, int decimals, bool inch) {
  return with_unit(without_trailing_zeros(figure_in(Amount::small_length, mm, decimals, inch)),
                   unit_in(Amount::small_length, inch));
}

std::string rough_size_text(double mm, bool inch) {
  const double size = std::abs(mm);
  const int decimals = size < 0.0995 ? 3 : size < 0.995 ? 2 : size < 9.95 ? 1 : 0;
  return amount_text(Amount::small_length, mm, decimals, inch);
}

std::string fiber_length_text(double mm, bool inch) {
  if (inch || mm < mm_per_km) return amount_text(Amount::fiber_length, mm / mm_per_m, 1, inch);
  return with_unit(figure(mm / mm_per_km, 4), "km");
}

std::string fiber_text(double mm, int digits, bool inch) {
  if (!inch && mm >= mm_per_km) return with_unit(short_figure(mm / mm_per_km, digits), "km");
  return with_unit(short_figure(value_in(Amount::fiber_length, mm / mm_per_m, inch), digits),
                   unit_in(Amount::fiber_length, inch));
}

std::string length_text(double mm) {
  constexpr double longest_in_mm = 1e4;
  const double size = std::abs(mm);
  if (size >= mm_per_km) return fmt::format("{:.5g} km", mm / mm_per_km);
  if (size >= longest_in_mm) return fmt::format("{:.5g} m", mm / mm_per_m);
  return fmt::format("{:.5g} mm", mm == 0.0 ? 0.0 : mm);
}

std::string duration_text(double seconds) {
  if (!std::isfinite(seconds)) return "-";
  const auto whole = static_cast<long long>(std::llround(std::max(0.0, seconds)));
  if (whole < 60) return fmt::format("{} s", whole);
  if (whole < 3600) return fmt::format("{} min {:02} s", whole / 60, whole % 60);
  return fmt::format("{} h {:02} min", whole / 3600, whole % 3600 / 60);
}

std::string percent_text(double share, int decimals) { return with_unit(figure(100.0 * share, decimals), "%"); }

std::string degrees_text(double degrees, int decimals) { return figure(degrees, decimals) + "\u00B0"; }

}  // namespace laywright
