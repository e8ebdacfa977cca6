#include "desk/comparison.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include <fmt/format.h>

#include "desk/field_help.h"
#include "desk/field_rows.h"
#include "figures/figures.h"
#include "plan/fields.h"

namespace laywright {
namespace {

// How a figure is shown: divided by `divisor`, so many decimals, with a unit.
struct Shown {
  double divisor = 1.0;
  int decimals = 0;
  std::string unit;
};

std::string with_unit(std::string text, const std::string& unit) {
  return unit.empty() ? text : fmt::format("{} {}", text, unit);
}

DifferenceRow row_of(std::string name, std::optional<double> first, std::optional<double> second,
                     const Shown& shown) {
  const auto text = [&](const std::optional<double>& value) {
    return value ? with_unit(figure(*value / shown.divisor, shown.decimals), shown.unit) : std::string("-");
  };
  DifferenceRow row{std::move(name), text(first), text(second), "-", 0};
  if (!first || !second) return row;
  const double difference = (*second - *first) / shown.divisor;
  if (std::abs(difference) < 0.5 * std::pow(10.0, -shown.decimals)) {
    row.difference = "same";
    return row;
  }
  row.sign = difference > 0.0 ? 1 : -1;
  const std::string size = with_unit(figure(std::abs(difference), shown.decimals), shown.unit);
  row.difference = fmt::format("{}{}", row.sign > 0 ? '+' : '-', size);
  return row;
}

std::vector<DifferenceRow> totals_of(const Wound& first, const Wound& second, Units units) {
  const bool inch = units == Units::inch;
  const auto shown_in = [inch](Amount amount, double metric_unit, int decimals) {
    return Shown{metric_unit / value_in(amount, 1.0, inch), decimals_in(amount, decimals, inch),
                 unit_in(amount, inch)};
  };
  const Shown diameter = shown_in(Amount::small_length, 1.0, 2);
  const Shown length = shown_in(Amount::fiber_length, 1000.0, 1);
  const Shown mass = shown_in(Amount::mass, 1.0, 3);
  std::vector<DifferenceRow> rows;
  using Get = std::function<std::optional<double>(const Wound&)>;
  const auto add = [&](const std::string& name, const Shown& shown, const Get& get) {
    DifferenceRow row = row_of(name, get(first), get(second), shown);
    if (row.first != "-" || row.second != "-") rows.push_back(std::move(row));
  };
  add("turns", {1.0, 1, ""}, [](const Wound& w) { return w.build().turns; });
  add("layers", {1.0, 0, ""}, [](const Wound& w) { return static_cast<double>(w.build().strokes.size()); });
  add("fiber", length, [](const Wound& w) { return w.build().length_mm; });
  add("outer diameter, left", diameter, [](const Wound& w) { return w.measurements().outer_diameter.left_mm; });
  add("outer diameter, middle", diameter, [](const Wound& w) { return w.measurements().outer_diameter.middle_mm; });
  add("outer diameter, right", diameter, [](const Wound& w) { return w.measurements().outer_diameter.right_mm; });
  add("outer diameter, greatest", diameter,
      [](const Wound& w) { return w.measurements().outer_diameter.greatest_mm; });
  for (const std::size_t side : {0U, 1U}) {
    const std::string name = side == 0 ? "left" : "right";
    add("ridge, " + name, diameter, [side](const Wound& w) -> std::optional<double> {
      const auto& edges = w.measurements().edges;
      return edges ? std::optional((*edges)[side].ridge_mm) : std::nullopt;
    });
    add("valley, " + name, diameter, [side](const Wound& w) -> std::optional<double> {
      const auto& edges = w.measurements().edges;
      return edges ? std::optional((*edges)[side].valley_mm) : std::nullopt;
    });
  }
  add("rim clearance", diameter, [](const Wound& w) { return w.measurements().rim_clearance_mm; });
  add("fill factor", {0.01, 2, "%"}, [](const Wound& w) { return w.measurements().fill_factor; });
  add("mass of the fiber", mass, [](const Wound& w) { return w.measurements().fiber_mass_kg; });
  add("time at line speed", {60.0, 1, "min"}, [](const Wound& w) { return w.measurements().wind_time_s; });
  return rows;
}

double places_of(const Wound& wound, FindingKind kind) {
  double places = 0.0;
  for (const Finding& finding : wound.measurements().findings) {
    if (finding.kind == kind) places += finding.occurrences;
  }
  return places;
}

std::vector<DifferenceRow> findings_of(const Wound& first, const Wound& second) {
  std::vector<DifferenceRow> rows;
  for (int i = 0; i <= static_cast<int>(FindingKind::rim_overrun); ++i) {
    const auto kind = static_cast<FindingKind>(i);
    const double before = places_of(first, kind);
    const double after = places_of(second, kind);
    if (before > 0.0 || after > 0.0) rows.push_back(row_of(words_for(kind), before, after, {1.0, 0, ""}));
  }
  return rows;
}

DifferenceRow setting_row(const FieldInfo& field, std::string_view written, std::optional<double> a,
                          std::optional<double> b, Units units) {
  const Unit* unit = unit_shown(field, written, units);
  const auto text = [&](const std::optional<double>& value) {
    if (!value) return std::string("-");
    constexpr std::size_t digits = 6;
    return field.kind == FieldKind::quantity ? format_quantity(*value, *unit, digits) : write_value(field, *value);
  };
  const FieldHelp help = help_for(field.path());
  DifferenceRow row{fmt::format("{}: {}", table_title(field.table), help.name), text(a), text(b), "-", 0};
  const bool has_size = a && b && field.kind != FieldKind::choice && std::isfinite(*a) && std::isfinite(*b);
  if (!has_size) return row;
  row.sign = *b > *a ? 1 : -1;
  row.difference = fmt::format("{}{}", row.sign > 0 ? '+' : '-', text(std::abs(*b - *a)));
  return row;
}

std::vector<DifferenceRow> settings_of(const PlanDraft& first, const PlanDraft& second, Units units) {
  std::vector<DifferenceRow> rows;
  for (const auto& field : plan_fields()) {
    const std::optional<double> a = field.get(first), b = field.get(second);
    if (a == b) continue;
    const auto origin = second.origins.find(field.path());
    rows.push_back(setting_row(field, origin == second.origins.end() ? "" : origin->second.written, a, b, units));
  }
  const std::size_t a = first.wind.steps.size(), b = second.wind.steps.size();
  if (a != b) {
    rows.push_back(row_of("Wind: steps", static_cast<double>(a), static_cast<double>(b), {1.0, 0, ""}));
  }
  return rows;
}

}  // namespace

DifferenceTable compare(const Wound& first, const Wound& second, Units units) {
  return {settings_of(first.plan().draft(), second.plan().draft(), units), totals_of(first, second, units),
          findings_of(first, second)};
}

}  // namespace laywright
