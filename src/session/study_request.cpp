#include "session/study_request.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "advise/searchable_setting.h"
#include "advise/setting_text.h"
#include "base/decimal.h"
#include "base/units.h"

namespace laywright {
namespace {

// What is computed from a build, but does not change it.
bool moves_the_build(const FieldRow& row) {
  constexpr std::array<std::string_view, 6> idle{
      "spool.mass",        "fiber.diameter_tolerance", "fiber.linear_mass",
      "fiber.max_tension", "fiber.min_bend_diameter",  "wind.line_speed"};
  const bool of_build = row.table != "takeup" && row.table != "limits";
  return of_build && std::find(idle.begin(), idle.end(), row.path) == idle.end();
}

bool can_vary(const FieldRow& row) {
  return row.info->kind != FieldKind::choice && row.value && std::isfinite(*row.value) && row.issues.empty() &&
         row.idle.empty() && moves_the_build(row);
}

// In the unit of the row, in three digits: a range as a person would type it.
std::string typed(const FieldRow& row, double value) {
  constexpr std::size_t digits = 3;
  if (std::abs(value) < 1e-9) value = 0.0;
  if (row.unit == nullptr) return fmt::format("{:.3g}", value);
  const std::string text = format_quantity(value, *row.unit, digits);
  return text.substr(0, text.find(' '));
}

// Where the plan has nothing.
double showing(const PlanDraft& draft, const FieldRow& row) {
  if (row.info->kind != FieldKind::quantity) return 1.0;
  switch (row.info->dimension) {
    case Dimension::length: return 2.0 * draft.fiber.diameter_mm;
    case Dimension::angle: return 2.0 * rad_per_deg;
    case Dimension::share: return 0.02;
    default: return 1.0;
  }
}

std::array<double, 2> range_about(const PlanDraft& draft, const FieldRow& row) {
  const Result<std::vector<SearchableSetting>> searchables = searchables_of(draft, {}, false);
  if (searchables.ok()) {
    for (const SearchableSetting& searchable : searchables.value()) {
      if (searchable.path == row.path) return {searchable.low, searchable.high};
    }
  }
  const double now = *row.value, fifth = 0.2 * std::abs(now);
  const Range& range = row.info->range;
  if (now == 0.0) return {std::max(0.0, range.low), std::min(showing(draft, row), range.high)};
  return {std::max(now - fifth, range.low), std::min(now + fifth, range.high)};
}

Result<double> read_end(const PlanDraft& draft, const FieldRow& row, const std::string& text) {
  const bool bare = row.unit != nullptr && parse_decimal(text);
  return read_setting(draft, row.path, bare ? fmt::format("{} {}", text, row.unit->name) : text);
}

// By the name of the field, not by its key.
Issue named(Issue issue, const FieldRow& row) {
  issue.key = key_words(row);
  if (issue.allowed == allowed_text(*row.info)) issue.allowed = row.allowed;
  return issue;
}

}  // namespace

std::vector<std::size_t> study_keys(const std::vector<FieldRow>& rows) {
  std::vector<std::size_t> keys;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (can_vary(rows[i])) keys.push_back(i);
  }
  return keys;
}

std::string key_words(const FieldRow& row) {
  constexpr std::string_view step = "wind.step[";
  if (row.table.rfind(step, 0) != 0) return fmt::format("{}: {}", table_title(row.table), row.help.name);
  const int number = std::stoi(row.table.substr(step.size())) + 1;
  return fmt::format("Step {}: {}", number, row.help.name);
}

StudyAxisRequest suggested_axis(const PlanDraft& draft, const FieldRow& row) {
  const auto [from, to] = range_about(draft, row);
  return {row.path, typed(row, from), typed(row, to)};
}

Result<StudySpec> spec_of(const StudyRequest& request, const PlanDraft& draft, const std::vector<FieldRow>& rows,
                          std::uint64_t seed) {
  StudySpec spec;
  spec.lay.seed = seed;
  spec.lay.fidelity = request.fine ? 1.0 : search_fidelity;
  for (const StudyAxisRequest& axis : request.axes) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& r) { return r.path == axis.path; });
    if (row == rows.end() || !can_vary(*row)) {
      return option_issue(axis.path, "", "has no number in this plan that could be varied; choose another setting");
    }
    const Result<double> from = read_end(draft, *row, axis.from), to = read_end(draft, *row, axis.to);
    for (const Result<double>* end : {&from, &to}) {
      if (!end->ok()) return named(end->issues().front(), *row);
    }
    if (from.value() == to.value()) return named(option_issue("", "", "needs a range with two ends"), *row);
    spec.axes.push_back({axis.path, from.value(), to.value(), axis.count});
    if (const Issues issues = check_study(draft, spec); !issues.empty()) return named(issues.front(), *row);
  }
  if (const Issues issues = check_study(draft, spec); !issues.empty()) return issues;
  return spec;
}

}  // namespace laywright
