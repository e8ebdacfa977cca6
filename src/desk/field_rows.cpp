#include "desk/field_rows.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "plan/dialling.h"

namespace laywright {
namespace {

// Of a value in its own unit, and of one that was converted: a person reads sizes to a part in a thousand, but never
// loses the ones of a large number.
constexpr std::size_t shown_digits = 6, converted_digits = 4;
constexpr std::size_t dialled_digits = 5;  // as text and sheet have it

// The inch system's usual unit of each, by the metric one that a field has.
std::string_view inch_unit(std::string_view metric) {
  constexpr std::array<std::array<std::string_view, 2>, 8> pairs{{{"mm", "in"},
                                                                  {"m", "ft"},
                                                                  {"kg", "lb"},
                                                                  {"g/km", "lb/1000ft"},
                                                                  {"GPa", "kpsi"},
                                                                  {"N", "lbf"},
                                                                  {"m/min", "ft/min"},
                                                                  {"N*m", "lbf*in"}}};
  for (const auto& [from, to] : pairs) {
    if (from == metric) return to;
  }
  return metric;  // deg, s, %, rpm and A serve both
}

bool is_inch(const Unit& unit) {
  constexpr std::string_view names[] = {"in", "ft",        "yd",     "mil", "lbf", "ft/min",
                                        "lb", "lb/1000ft", "lbf*in", "psi", "kpsi"};
  return std::find(std::begin(names), std::end(names), unit.name) != std::end(names);
}

bool serves_both(const Unit& unit) {
  constexpr Dimension dimensions[] = {Dimension::angle, Dimension::time, Dimension::share, Dimension::rotation_speed,
                                      Dimension::current};
  return std::find(std::begin(dimensions), std::end(dimensions), unit.dimension) != std::end(dimensions);
}

std::string number_text(const FieldInfo& field, double value, const Unit* unit, std::string_view written) {
  if (field.kind != FieldKind::quantity) return write_value(field, value);
  if (!std::isfinite(value)) return fmt::format("{}", value);
  // As the person wrote it, to the last digit.
  const ParsedQuantity before = parse_quantity(written, field.dimension);
  const bool same = before.quantity && before.quantity->value == value && before.quantity->unit == unit;
  const auto number = [](const std::string& text) { return text.substr(0, text.find(' ')); };
  if (same) return number(format_quantity(value, *unit));
  const Unit* own = before.quantity ? before.quantity->unit : find_unit(field.usual_unit);
  if (own == unit) return number(format_quantity(value, *unit, shown_digits));
  const std::string whole = number(format_quantity(value, *unit, shown_digits));
  const auto ones = static_cast<std::size_t>(std::count_if(whole.begin(), std::find(whole.begin(), whole.end(), '.'),
                                                           [](char c) { return c >= '0' && c <= '9'; }));
  return number(format_quantity(value, *unit, std::max(converted_digits, ones)));
}

// Why a field counts for nothing in this plan.
std::string idle_reason(const PlanDraft& draft, std::string_view path) {
  const Traverse& traverse = draft.traverse;
  if (path == "traverse.step_angle" && traverse.motion != Motion::stepped) return "only a stepped guide has one";
  if (path == "traverse.reversal.turns" && traverse.reversal.kind == ReversalKind::instant) {
    return "the guide turns back at once; choose dwell or ramp";
  }
  if (path == "fiber.scatter_length" && draft.fiber.diameter_scatter_mm <= 0.0) {
    return "the diameter does not scatter; give a diameter scatter";
  }
  if (path.substr(0, 7) == "takeup." && !draft.takeup) return "the plan has no take-up; add one";
  if (path == "takeup.taper" && draft.takeup && draft.takeup->control != TensionControl::taper) {
    return "only the taper control has one";
  }
  const std::string_view ends[] = {"wind.length", "wind.turns", "wind.diameter"};
  const bool is_end = std::find(std::begin(ends), std::end(ends), path) != std::end(ends);
  if (is_end && !value_at(draft, path)) return "the wind ends by another measure";
  return "";
}

Issues issues_at(const Issues& issues, std::string_view path) {
  Issues found;
  std::copy_if(issues.begin(), issues.end(), std::back_inserter(found),
               [&](const Issue& issue) { return issue.key == path; });
  return found;
}

// What is set on the machine for it, and where that is another value, which.
std::string dialled_words(const FieldRow& row, const Dialling& dialling) {
  const auto found = std::find_if(dialling.settings.begin(), dialling.settings.end(),
                                  [&](const DialledSetting& each) { return each.path == row.path; });
  if (found == dialling.settings.end() || has_error(row.issues) || !std::isfinite(found->laid)) return "";
  if (!found->reading) return "What to dial was not measured";
  const std::string dialled = fmt::format("Dialled {}", visible(reading_words(*found)));
  if (!found->moved()) return dialled;
  return fmt::format(
      "{}\n= {}", dialled,
      row.unit == nullptr ? short_figure(found->laid, 5) : format_quantity(found->laid, *row.unit, dialled_digits));
}

template <class Owner>
void add_rows(const std::vector<Field<Owner>>& fields, const std::string& step, const PlanState& state,
              const Issues& issues, Units units, const Dialling& dialling, std::vector<FieldRow>& rows) {
  for (const Field<Owner>& field : fields) {
    FieldRow row;
    row.table = step.empty() ? std::string(field.table) : step;
    row.path = fmt::format("{}.{}", row.table, field.key);
    row.info = &field;
    row.help = help_for(field.path());
    row.value = value_at(state.draft, row.path);
    const auto origin = state.draft.origins.find(row.path);
    const bool is_written = origin != state.draft.origins.end();
    const std::string_view written = is_written ? std::string_view(origin->second.written) : std::string_view();
    row.unit = unit_shown(field, written, units);
    row.issues = issues_at(issues, row.path);
    row.is_default = !is_written;
    row.allowed = allowed_text(field, row.unit);
    row.idle = idle_reason(state.draft, row.path);
    if (state.unread.count(row.path) > 0) {
      row.text = row.issues.empty() ? "" : row.issues.front().value;
    } else if (row.value) {
      row.text = number_text(field, *row.value, row.unit, written);
    }
    row.dialled = dialled_words(row, dialling);
    rows.push_back(std::move(row));
  }
}

}  // namespace

const Unit* unit_shown(const FieldInfo& field, std::string_view written, Units units) {
  const Unit* unit = unit_written(field, written);
  if (unit == nullptr || serves_both(*unit)) return unit;
  if (units == Units::inch) return is_inch(*unit) ? unit : find_unit(inch_unit(field.usual_unit));
  return is_inch(*unit) ? find_unit(field.usual_unit) : unit;
}

std::vector<FieldRow> field_rows(const PlanState& state, const Issues& issues, Units units) {
  std::vector<FieldRow> rows;
  const Dialling dialling = dial(state.draft);
  add_rows(plan_fields(), "", state, issues, units, dialling, rows);
  for (std::size_t i = 0; i < state.draft.wind.steps.size(); ++i) {
    add_rows(step_fields(), step_path(i), state, issues, units, dialling, rows);
  }
  return rows;
}

Issues other_issues(const PlanState& state, const Issues& issues) {
  Issues others;
  std::copy_if(issues.begin(), issues.end(), std::back_inserter(others),
               [&](const Issue& issue) { return field_at(state.draft, issue.key) == nullptr; });
  return others;
}

}  // namespace laywright
