#include "answers/study_verdicts.h"

#include <algorithm>
#include <map>
#include <vector>

#include <fmt/format.h>

#include "answers/stations_words.h"
#include "answers/study_report.h"
#include "figures/figures.h"

namespace laywright {
namespace {

constexpr int most_lines = 40, most_across = 60;

// Known without colours: a full sign, a half one, an empty place's; nothing where no plan is sound.
char sign_of(const StudyRow& row) {
  if (!row.verdict) return ' ';
  switch (row.verdict->grade) {
    case Grade::good: return '#';
    case Grade::marginal: return '+';
    case Grade::do_not_wind: return '.';
  }
  return ' ';
}

std::string list_of(const Study& study) {
  const StudyAxis& axis = study.spec.axes[0];
  std::string text = fmt::format("  {:<30} {:<12} {}\n", axis.path, "verdict", "what decides");
  for (const StudyRow& row : study.rows) {
    const std::string value = study_value(study, axis.path, row.values[0]);
    text += row.verdict
                ? fmt::format("  {:<30} {:<12} {}\n", value, name_of(row.verdict->grade), row.verdict->decides)
                : fmt::format("  {:<30} {}\n", value, row.figures.empty() ? "no sound plan" : "-");
  }
  return text;
}

std::string map_of(const Study& study) {
  const StudyAxis &across = study.spec.axes[0], &upward = study.spec.axes[1];
  std::string text = "  # good   + marginal   . do not wind\n";
  for (int k = upward.count - 1; k >= 0; --k) {
    std::string signs;
    for (int i = 0; i < across.count; ++i)
      signs += sign_of(study.rows[static_cast<std::size_t>(i * upward.count + k)]);
    text += fmt::format("  {:>14}  {}\n", study_value(study, upward.path, upward.at(k)), signs);
  }
  return text + fmt::format("  {:>14}  upward {}; to the right {}, {} to {}\n", "", upward.path, across.path,
                            study_value(study, across.path, across.from),
                            study_value(study, across.path, across.to));
}

bool fits(const Study& study) {
  const auto& axes = study.spec.axes;
  if (axes.size() == 1) return axes[0].count <= most_lines;
  return axes[0].count <= most_across && axes[1].count <= most_lines;
}

// "valley, right flange in 5, ribbon in 2": what decides where it is not good, the most frequent first.
std::string deciding_words(const std::vector<StudyRow>& rows) {
  std::map<std::string, std::size_t> counts;
  for (const StudyRow& row : rows)
    if (row.verdict && row.verdict->grade != Grade::good) ++counts[row.verdict->decides];
  std::vector<std::pair<std::string, std::size_t>> all(counts.begin(), counts.end());
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  std::string words;
  for (const auto& [what, count] : all) words += fmt::format("{}{} in {}", words.empty() ? "" : "; ", what, count);
  return words;
}

std::string against_good(const std::vector<StudyRow>& rows) {
  const std::string words = deciding_words(rows);
  return words.empty() ? "" : paragraph("What decides where it is not good: " + words + ".", 2);
}

}  // namespace

std::string grades_words(const GradeCount& count, const char* what) {
  std::string words;
  for (const Grade grade : {Grade::good, Grade::marginal, Grade::do_not_wind})
    words += fmt::format("{}{} in {}", words.empty() ? "" : ", ", name_of(grade),
                         count.of[static_cast<std::size_t>(grade)]);
  return fmt::format("{} of {} {}", words, count.judged() + count.without, what);
}

std::string coarse_words(const Study& study) {
  if (study.spec.lay.fidelity >= 1.0) return "";
  return stations_words(study.spec.lay.fidelity, "These builds") + " Lay a setting to be sure of its verdict.";
}

std::string study_verdicts(const Study& study) {
  const GradeCount count = count_grades(study.rows);
  std::string text = fmt::format("  verdict: {}\n", grades_words(count, "builds"));
  if (count.judged() == 0) return text;
  if (fits(study)) text += study.spec.axes.size() == 1 ? list_of(study) : map_of(study);
  text += against_good(study.rows);
  const std::string coarse = coarse_words(study);
  return coarse.empty() ? text : text + paragraph(coarse, 2);
}

std::string tolerance_verdicts(const Study& study, const ToleranceStatistics& statistics) {
  constexpr double percent = 100.0;
  std::string text = fmt::format("Verdict: {}\n", grades_words(statistics.grades, "winds"));
  if (statistics.grades.judged() == 0) return text;
  text +=
      fmt::format("Chance of a good wind: {} (95 % interval {} to {})\n", percent_text(statistics.good_share, 0),
                  figure(percent * statistics.good_interval[0], 0), percent_text(statistics.good_interval[1], 0));
  std::vector<StudyRow> independent;
  for (const StudyRow& row : study.rows)
    if (is_independent(study, row)) independent.push_back(row);
  text += against_good(independent);
  const std::string coarse = coarse_words(study);
  return coarse.empty() ? text : text + paragraph(coarse, 2);
}

}  // namespace laywright
