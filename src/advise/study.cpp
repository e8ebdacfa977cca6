#include "advise/study.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>
#include <boost/math/special_functions/erf.hpp>

#include "advise/judged.h"
#include "advise/lattice.h"
#include "advise/setting_text.h"
#include "plan/dialling.h"
#include "plan/entry_issues.h"
#include "plan/plan_values.h"
#include "plan/plan_writer.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

// Seeds of the scatter are drawn from so many.
constexpr double seeds = 1e6;

double drawn(const Tolerance& tolerance, double u) {
  if (tolerance.path == scatter_path) return std::floor(u * seeds);
  if (tolerance.law == Tolerance::Law::uniform) return tolerance.centre + tolerance.size * (2.0 * u - 1.0);
  // Inside of both ends, where the normal distribution has none.
  const double inside = std::clamp(u, 1e-9, 1.0 - 1e-9);
  return tolerance.centre + tolerance.size * std::sqrt(2.0) * boost::math::erf_inv(2.0 * inside - 1.0);
}

std::vector<std::vector<double>> grid_points(const StudySpec& spec) {
  std::vector<std::vector<double>> points;
  for (int i = 0; i < spec.axes[0].count; ++i) {
    if (spec.axes.size() == 1) {
      points.push_back({spec.axes[0].at(i)});
      continue;
    }
    for (int k = 0; k < spec.axes[1].count; ++k) points.push_back({spec.axes[0].at(i), spec.axes[1].at(k)});
  }
  return points;
}

// Sample after sample: a, b, then a with each one value from b.
std::vector<std::vector<double>> tolerance_points(const StudySpec& spec, const Progress* progress) {
  const std::size_t k = spec.tolerances.size();
  std::vector<std::vector<double>> points;
  for (const auto& unit : lattice(static_cast<std::size_t>(spec.samples), 2 * k, spec.lay.seed, progress)) {
    if (progress != nullptr && progress->cancelled()) return {};
    std::vector<double> a, b;
    for (std::size_t i = 0; i < k; ++i) {
      a.push_back(drawn(spec.tolerances[i], unit[i]));
      b.push_back(drawn(spec.tolerances[i], unit[k + i]));
    }
    points.push_back(a);
    points.push_back(b);
    for (std::size_t i = 0; i < k; ++i) {
      points.push_back(a);
      points.back()[i] = b[i];
    }
  }
  return points;
}

bool same_axis(const StudyAxis& a, const StudyAxis& b) {
  return a.path == b.path && a.from == b.from && a.to == b.to && a.count == b.count;
}
bool same_tolerance(const Tolerance& a, const Tolerance& b) {
  return a.path == b.path && a.law == b.law && a.centre == b.centre && a.size == b.size;
}
bool same_spec(const StudySpec& a, const StudySpec& b) {
  return std::equal(a.axes.begin(), a.axes.end(), b.axes.begin(), b.axes.end(), same_axis) &&
         std::equal(a.tolerances.begin(), a.tolerances.end(), b.tolerances.begin(), b.tolerances.end(),
                    same_tolerance) &&
         a.samples == b.samples && a.lay.seed == b.lay.seed && a.lay.fidelity == b.lay.fidelity && a.way == b.way;
}

Issues check_axis(const PlanDraft& plan, const StudyAxis& axis) {
  const FieldInfo* field = field_at(plan, axis.path);
  if (field == nullptr) return {option_issue(axis.path, "", "is no key of this plan")};
  if (field->kind == FieldKind::choice) return {option_issue(axis.path, "", "is a choice and has no range")};
  constexpr int most = 10'000;
  if (axis.count < 2 || axis.count > most) {
    return {option_issue(axis.path, fmt::format("{}", axis.count), "is no number of values", "2 to 10000")};
  }
  for (const double end : {axis.from, axis.to}) {
    if (!field->range.holds(end)) {
      return {option_issue(axis.path, write_value(*field, end), out_of_range_words, allowed_text(*field))};
    }
  }
  return {};
}

}  // namespace

double StudyAxis::at(int index) const { return index + 1 == count ? to : from + (to - from) * index / (count - 1); }

std::size_t StudySpec::rows() const {
  if (is_grid()) {
    std::size_t rows = 1;
    for (const StudyAxis& axis : axes) rows *= static_cast<std::size_t>(axis.count);
    return rows;
  }
  return static_cast<std::size_t>(samples) * (2 + tolerances.size());
}

std::vector<std::string> StudySpec::paths() const {
  std::vector<std::string> all;
  for (const StudyAxis& axis : axes) all.push_back(axis.path);
  for (const Tolerance& tolerance : tolerances) all.push_back(tolerance.path);
  return all;
}

std::size_t Study::figure(std::string_view key) {
  return static_cast<std::size_t>(find_outcome_figure(key) - outcome_figures().data());
}

std::vector<std::vector<double>> study_points(const StudySpec& spec, const Progress* progress) {
  return spec.is_grid() ? grid_points(spec) : tolerance_points(spec, progress);
}

PlanDraft row_plan(const PlanDraft& plan, const StudySpec& spec, const std::vector<double>& values,
                   LaySettings& lay) {
  PlanDraft draft = plan;
  const std::vector<std::string> paths = spec.paths();
  for (std::size_t i = 0; i < paths.size(); ++i) {
    if (paths[i] == scatter_path) {
      lay.seed = spec.lay.seed + static_cast<std::uint64_t>(values[i]);
      continue;
    }
    const bool is_whole = field_at(draft, paths[i])->kind == FieldKind::whole;
    set_value(draft, paths[i], is_whole ? std::round(values[i]) : values[i]);
  }
  return draft;
}

std::vector<Tolerance> own_tolerances(const PlanDraft& plan) {
  std::vector<Tolerance> all;
  if (plan.fiber.diameter_tolerance_mm > 0.0) {
    all.push_back(
        {"fiber.diameter", Tolerance::Law::uniform, plan.fiber.diameter_mm, plan.fiber.diameter_tolerance_mm});
  }
  if (scatters(plan)) {
    all.push_back({scatter_path, Tolerance::Law::uniform, 0.0, 0.0});
  }
  return all;
}

Issues check_study(const PlanDraft& plan, const StudySpec& spec) {
  if (spec.axes.empty() == spec.tolerances.empty()) {
    return {option_issue("", "", "a study needs one or two keys to vary, or tolerances to sample, not both")};
  }
  if (spec.axes.size() > 2) return {option_issue(spec.axes[2].path, "", "is one key too many: vary one or two")};
  for (const StudyAxis& axis : spec.axes) {
    if (Issues issues = check_axis(plan, axis); !issues.empty()) return issues;
  }
  std::vector<std::string> paths = spec.paths();
  std::sort(paths.begin(), paths.end());
  if (const auto twice = std::adjacent_find(paths.begin(), paths.end()); twice != paths.end()) {
    return {option_issue(*twice, "", "is given twice")};
  }
  for (const Tolerance& each : spec.tolerances) {
    if (each.path == scatter_path) continue;
    const FieldInfo* field = field_at(plan, each.path);
    if (field == nullptr) return {option_issue(each.path, "", "is no key of this plan")};
    if (field->kind == FieldKind::choice || !std::isfinite(each.centre)) {
      return {option_issue(each.path, "", "has no number that could be off")};
    }
    if (!(each.size > 0.0)) return {option_issue(each.path, "", "needs a tolerance above 0")};
  }
  constexpr std::size_t most_rows = 10'000'000, most_tolerances = 20;
  if (spec.tolerances.size() > most_tolerances) return {option_issue("", "", "at most 20 tolerances")};
  if (!spec.is_grid() && spec.samples < 2) return {option_issue("", "", "needs 2 samples or more")};
  if (spec.rows() > most_rows) return {option_issue("", "", "has more than ten million builds")};
  return {};
}

Result<Study> run_study(const Plan& plan, const StudySpec& spec, std::size_t shard, std::size_t shards, int threads,
                        Progress& progress) {
  if (Issues issues = check_study(plan.draft(), spec); !issues.empty()) return issues;
  Study study{plan.asked(), spec, {}};
  // What lies between the steps of a dial is what a study of tolerances is about.
  const PlanDraft laid = without_dials(plan.draft());
  std::vector<std::vector<double>> points = study_points(spec, &progress);
  for (std::size_t i = shard; i < points.size() && !progress.cancelled(); i += shards) {
    study.rows.push_back({i, std::move(points[i]), {}, {}});
  }
  run_parallel(study.rows.size(), threads, progress, [&](std::size_t i, Progress& inner) {
    StudyRow& row = study.rows[i];
    LaySettings settings = spec.lay;
    const PlanDraft draft = row_plan(laid, spec, row.values, settings);
    const std::optional<Judged> judged = judge_plan(draft, settings, inner, spec.way);
    if (!judged) return;
    for (const OutcomeFigure& figure : outcome_figures()) row.figures.push_back(figure.get(judged->outcome));
    const WindVerdict& verdict = judged->verdict;
    row.verdict = RowVerdict{verdict.grade, name_of(verdict.checks[verdict.deciding]), verdict.reason};
  });
  if (progress.cancelled()) return stopped();
  return study;
}

Result<Study> merged(std::vector<Study> shards) {
  if (shards.empty()) return option_issue("", "", "there is nothing to merge");
  Study whole{shards[0].plan, shards[0].spec, {}};
  for (Study& shard : shards) {
    if (!same_spec(shard.spec, whole.spec) || !same_plan(shard.plan, whole.plan)) {
      return option_issue("", "", "these are shards of different studies; merge those of one");
    }
    for (StudyRow& row : shard.rows) whole.rows.push_back(std::move(row));
  }
  std::sort(whole.rows.begin(), whole.rows.end(),
            [](const StudyRow& a, const StudyRow& b) { return a.index < b.index; });
  const auto twice = std::adjacent_find(whole.rows.begin(), whole.rows.end(),
                                        [](const StudyRow& a, const StudyRow& b) { return a.index == b.index; });
  if (twice != whole.rows.end()) {
    return option_issue("", "", fmt::format("build {} is there twice: a shard was given twice", twice->index));
  }
  if (!whole.complete()) {
    return option_issue("", "",
                        fmt::format("{} of {} builds are missing: shards are missing",
                                    whole.spec.rows() - whole.rows.size(), whole.spec.rows()));
  }
  return whole;
}

}  // namespace laywright
