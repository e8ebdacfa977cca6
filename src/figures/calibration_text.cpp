#include "figures/calibration_text.h"

#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/round_figure.h"
#include "figures/figures.h"
#include "plan/dial_text.h"

namespace laywright {
namespace {

std::string words(const CalibrationRequest& request, double value) {
  constexpr std::size_t digits = 5;
  return request.unit == nullptr ? counted(setting(value), "turn") : format_quantity(value, *request.unit, digits);
}

std::string reading_words(double reading, const Dial& dial) {
  return fmt::format("{:.10g} {}", reading, visible(dial.unit));
}

// The sizes of what is off, in one decimal place for all.
std::string points_table(const CalibrationRequest& request, const Calibration& found) {
  std::string text = fmt::format("  {:<16} {:>14} {:>14} {:>14}\n", "reading", "measured", "by the line", "off");
  for (std::size_t i = 0; i < request.points.size(); ++i) {
    const DialPoint& point = request.points[i];
    const double off = std::abs(found.off[i]) < 1e-9 * std::abs(point.value) ? 0.0 : found.off[i];
    text += fmt::format("  {:<16} {:>14} {:>14} {:>14}\n", reading_words(point.reading, request.given),
                        words(request, point.value), words(request, point.value - off), words(request, off));
  }
  return text;
}

std::string verdict(const CalibrationRequest& request, const Calibration& found) {
  if (request.points.size() == 2)
    return "Two readings give a line, but do not show whether the dial follows one: take a third.\n";
  const double step = request.given.step.value_or(0.0) * std::abs(found.per_unit);
  std::string text = fmt::format("The line misses the readings by {} at most", words(request, found.greatest_off));
  const bool rounded = step > 0.0 && request.given.law == DialLaw::proportional;
  if (rounded && found.greatest_off > step)
    text += fmt::format(
        ", more than a step of the dial ({}): look for a slip in a reading, or print the readings themselves with "
        "--points",
        words(request, step));
  if (rounded && found.greatest_off <= step) text += fmt::format("; a step of the dial is {}", words(request, step));
  return paragraph(text + ".", 0);
}

// What is pasted need not be longer than what can be measured.
double short_value(const FieldInfo& field, double value) {
  constexpr std::size_t digits = 9;
  if (field.kind != FieldKind::quantity) return without_noise(value);
  const std::string text = format_quantity(value, *find_unit(field.usual_unit), digits);
  return parse_quantity(text, field.dimension).quantity->value;
}

Dial dial_of(const CalibrationRequest& request, const Calibration& found) {
  Dial dial = request.given;
  if (request.as_measured) {
    dial.points = request.points;
    std::sort(dial.points.begin(), dial.points.end(),
              [](const DialPoint& a, const DialPoint& b) { return a.reading < b.reading; });
    return dial;
  }
  dial.per_unit = short_value(*field_of_dial(request.dial), found.per_unit);
  double greatest = 0.0;
  for (const DialPoint& point : request.points) greatest = std::max(greatest, std::abs(point.value));
  constexpr double rounding = 1e-12;
  const bool none = std::abs(found.at_zero) <= rounding * greatest;
  dial.at_zero = none ? 0.0 : short_value(*field_of_dial(request.dial), found.at_zero);
  return dial;
}

}  // namespace

std::string calibration_text(const CalibrationRequest& request, const Calibration& found) {
  std::string text = points_table(request, found);
  if (!request.as_measured) text += '\n' + verdict(request, found);
  text += "\nFor the machine's entry in a catalogue, or a plan:\n";
  MachineDials machine;
  machine.dials[request.dial] = dial_of(request, found);
  for (const DialLines& table : lines_of(machine)) {
    text += fmt::format("\n[{}]\n", table.table);
    for (const auto& [key, written] : table.keys) text += fmt::format("{} = {}\n", key, written);
  }
  return text;
}

}  // namespace laywright
