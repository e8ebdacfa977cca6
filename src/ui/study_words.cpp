// A study's builds in words.
#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "answers/stations_words.h"
#include "answers/study_report.h"
#include "base/quantity_text.h"
#include "base/spelling.h"
#include "figures/figures.h"
#include "session/study_request.h"
#include "ui/study_map.h"
#include "ui/texts.h"

namespace laywright {
namespace {

// Of what has no other unit in inches: none.
std::optional<Amount> amount_of(const OutcomeFigure& figure) {
  if (figure.unit == "mm") return Amount::small_length;
  if (figure.unit == "m") return Amount::fiber_length;
  return std::nullopt;
}

std::string shown_unit(const OutcomeFigure& figure, Units units) {
  const std::optional<Amount> amount = amount_of(figure);
  return amount ? unit_in(*amount, units == Units::inch) : std::string(figure.unit);
}

// "Do not wind: the valley at the right flange is 3.83 fiber diameters deep; ...", in lines.
std::string verdict_words(const RowVerdict& verdict) {
  constexpr std::size_t columns = 60;
  std::string words =
      wrapped(fmt::format("{}: {}.", capitalised(name_of(verdict.grade)), verdict.reason), columns, 0);
  while (!words.empty() && words.back() == '\n') words.pop_back();
  return words;
}

Units units_of(const StudyPicture& picture) { return picture.bench.active()->stage.view.units; }

const FieldRow* row_of(const StudyPicture& picture, const std::string& path) {
  const std::vector<FieldRow>& rows = picture.bench.rows();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& row) { return row.path == path; });
  return found == rows.end() ? nullptr : &*found;
}

}  // namespace

std::string figure_heading(const OutcomeFigure& figure, Units units) {
  const std::string unit = shown_unit(figure, units);
  std::string words = spoken(std::string(figure.words));
  if (!unit.empty()) words += fmt::format(", {}", unit);
  return words;
}

double figure_in(const OutcomeFigure& figure, double value, Units units) {
  const std::optional<Amount> amount = amount_of(figure);
  return amount ? value_in(*amount, value, units == Units::inch) : value;
}

std::string figure_text(const OutcomeFigure& f, double value, Units units) {
  const std::optional<Amount> amount = amount_of(f);
  return amount ? figure_in(*amount, value, f.decimals, units == Units::inch) : figure(value, f.decimals);
}

std::string axis_text(const StudyPicture& picture, const StudyAxis& axis, double value, bool with_unit) {
  const FieldRow* row = row_of(picture, axis.path);
  if (row == nullptr) return study_value(picture.answer.study, axis.path, value);
  if (row->unit == nullptr) return short_figure(value, 4);
  constexpr std::size_t digits = 4;
  const std::string text = format_quantity(std::abs(value) < 1e-9 ? 0.0 : value, *row->unit, digits);
  return with_unit ? text : text.substr(0, text.find(' '));
}

std::string axis_heading(const StudyPicture& picture, const StudyAxis& axis) {
  const FieldRow* row = row_of(picture, axis.path);
  if (row == nullptr) return axis.path;
  return row->unit == nullptr ? key_words(*row) : fmt::format("{}, {}", key_words(*row), row->unit->name);
}

std::string build_words(const StudyPicture& picture, std::size_t index) {
  const Study& study = picture.answer.study;
  const StudyRow& row = study.rows[index];
  std::string words;
  for (std::size_t i = 0; i < study.spec.axes.size(); ++i) {
    const StudyAxis& axis = study.spec.axes[i];
    const FieldRow* field = row_of(picture, axis.path);
    words += fmt::format("{}: {}\n", field == nullptr ? axis.path : spoken(std::string(field->help.name)),
                         axis_text(picture, axis, row.values[i], true));
  }
  if (row.figures.empty()) return words + "No sound plan with these settings.";
  const Units units = units_of(picture);
  const auto tell = [&](const OutcomeFigure& f) {
    const std::string unit = shown_unit(f, units);
    words += fmt::format("\n{}: {}{}{}", spoken(std::string(f.words)),
                         figure_text(f, row.figures[Study::figure(f.key)], units), unit.empty() ? "" : " ", unit);
  };
  tell(picture.figure);
  for (const char* key : {"outer_diameter_greatest_mm", "rim_clearance_mm", "gap_length_m", "edge_deviation_mm",
                          "pile_up_places", "flange_gap_places", "fill_factor"}) {
    if (picture.figure.key != key) tell(*find_outcome_figure(key));
  }
  if (row.verdict) words += fmt::format("\n\n{}", verdict_words(*row.verdict));
  if (study.spec.lay.fidelity < 1.0)
    words += fmt::format("\n{} Near a limit, the build itself may be judged otherwise.",
                         stations_words(study.spec.lay.fidelity, "These builds"));
  return words + (picture.stale ? "" : " A click sets the plan so.");
}

}  // namespace laywright
