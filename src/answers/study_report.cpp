#include "answers/study_report.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "advise/movable_setting.h"
#include "advise/study_statistics.h"
#include "answers/study_verdicts.h"
#include "base/quantity_text.h"
#include "figures/figures.h"

namespace laywright {
namespace {

std::string with_unit(const OutcomeFigure& f, double value) {
  return fmt::format("{}{}{}", figure(value, f.decimals), f.unit.empty() ? "" : " ", f.unit);
}

std::string settings_of(const Study& study, const StudyRow& row) {
  const std::vector<std::string> paths = study.spec.paths();
  std::string text;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    text += fmt::format("{}{}", i == 0 ? "" : ", ", study_value(study, paths[i], row.values[i]));
  }
  return text;
}

std::string grid_text(const Study& study) {
  std::string text;
  for (const StudyAxis& axis : study.spec.axes) {
    text += fmt::format("  {:<30} {} to {}, {} values\n", axis.path, study_value(study, axis.path, axis.from),
                        study_value(study, axis.path, axis.to), axis.count);
  }
  text += '\n' + study_verdicts(study) + '\n';
  text += fmt::format("  {:<30} {:>12} {:<24} {:>12} {}\n", "figure", "least", "at", "greatest", "at");
  for (std::size_t f = 0; f < outcome_figures().size(); ++f) {
    const StudyRow *least = nullptr, *most = nullptr;
    for (const StudyRow& row : study.rows) {
      if (row.figures.empty() || !std::isfinite(row.figures[f])) continue;
      if (least == nullptr || row.figures[f] < least->figures[f]) least = &row;
      if (most == nullptr || row.figures[f] > most->figures[f]) most = &row;
    }
    if (least == nullptr) continue;
    const OutcomeFigure& what = outcome_figures()[f];
    text += fmt::format("  {:<30} {:>12} {:<24} {:>12} {}\n", what.words, with_unit(what, least->figures[f]),
                        settings_of(study, *least), with_unit(what, most->figures[f]), settings_of(study, *most));
  }
  return text;
}

std::string tolerance_line(const Study& study, const Tolerance& tolerance) {
  if (tolerance.path == scatter_path) return fmt::format("  {:<30} by seed\n", "scatter of strokes");
  return fmt::format("  {:<30} {} +- {}, {}\n", tolerance.path, study_value(study, tolerance.path, tolerance.centre),
                     study_value(study, tolerance.path, tolerance.size),
                     tolerance.law == Tolerance::Law::uniform ? "uniform, half width" : "normal, one sigma");
}

std::string shares_table(const Study& study, const ToleranceStatistics& statistics) {
  if (statistics.shares.empty()) return "\nThe greatest outer diameter does not vary.\n";
  std::string text = fmt::format(
      "\nWhat moves the greatest outer diameter: shares of its variance (Sobol indices, Jansen's estimators)\n"
      "  {:<30} {:>18} {:>18}\n",
      "tolerance", "alone", "with all others");
  for (std::size_t i = 0; i < statistics.shares.size(); ++i) {
    const SobolShare& share = statistics.shares[i];
    const std::string& path = study.spec.tolerances[i].path;
    text += fmt::format("  {:<30} {:>18} {:>18}\n", path == scatter_path ? "scatter of strokes" : path,
                        fmt::format("{} +- {}", figure(share.first, 2), figure(share.first_error, 2)),
                        fmt::format("{} +- {}", figure(share.total, 2), figure(share.total_error, 2)));
  }
  return text + "  +- is one standard error; more samples make it smaller.\n";
}

std::string tolerances_text(const Study& study) {
  const ToleranceStatistics statistics = tolerance_statistics(study);
  std::string text;
  for (const Tolerance& tolerance : study.spec.tolerances) text += tolerance_line(study, tolerance);
  text += fmt::format("\n  {:<30} {:>12} {:>12} {:>12}\n", fmt::format("of {} winds", statistics.winds), "5 %",
                      "50 %", "95 %");
  for (const FigureSpread& spread : statistics.spreads) {
    const OutcomeFigure& what = outcome_figures()[spread.figure];
    text += fmt::format("  {:<30} {:>12} {:>12} {:>12}\n", what.words, with_unit(what, spread.p5),
                        with_unit(what, spread.p50), with_unit(what, spread.p95));
  }
  text += '\n' + tolerance_verdicts(study, statistics);
  return text + shares_table(study, statistics);
}

}  // namespace

std::string study_value(const Study& study, const std::string& path, double value) {
  return path == scatter_path ? fmt::format("seed {}", std::llround(value)) : shown_value(study.plan, path, value);
}

std::string study_csv(const Study& study) {
  std::string csv = "build";
  for (const std::string& path : study.spec.paths()) csv += ',' + path;
  for (const OutcomeFigure& each : outcome_figures()) csv += fmt::format(",{}", each.key);
  csv += ",verdict,decides\n";
  for (const StudyRow& row : study.rows) {
    csv += fmt::format("{}", row.index);
    for (const double value : row.values) csv += fmt::format(",{}", value);
    for (std::size_t f = 0; f < outcome_figures().size(); ++f) {
      csv += row.figures.empty() ? std::string(",") : fmt::format(",{:.9g}", row.figures[f]);
    }
    csv += row.verdict ? fmt::format(",{},\"{}\"\n", name_of(row.verdict->grade), row.verdict->decides) : ",,\n";
  }
  return csv;
}

std::string study_text(const Study& study) {
  const std::string title = title_of(study.plan);
  return fmt::format("{}\nStudy of {}\n", title, counted(study.rows.size(), "build")) +
         (study.spec.is_grid() ? grid_text(study) : tolerances_text(study));
}

}  // namespace laywright
