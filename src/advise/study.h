// Studies: a plan laid many times with some of its values changed, over a grid, or at random within tolerances.
//
// Row k of a study depends on the study and k alone, so that any part of it can be laid anywhere, and all parts
// together are the same as the whole laid at once, for any number of threads.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "advise/trial.h"
#include "base/result.h"
#include "jobs/parallel.h"
#include "measure/grade.h"

namespace laywright {

// A key over a range, both ends included.
struct StudyAxis {
  std::string path;
  double from = 0.0, to = 0.0;
  int count = 2;

  [[nodiscard]] double at(int index) const;
};

// A key that is not met exactly.
struct Tolerance {
  enum class Law { uniform, normal };

  std::string path;  // or `scatter_path`: what scatters from stroke to stroke, by its seed
  Law law = Law::uniform;
  double centre = 0.0;
  double size = 0.0;  // half width of a uniform law, one sigma of a normal one
};
inline constexpr const char* scatter_path = "scatter";

struct StudySpec {
  std::vector<StudyAxis> axes;        // one or two: a grid
  std::vector<Tolerance> tolerances;  // or these: random samples
  int samples = 0;  // of tolerances: 2 + their number rows each (Saltelli's scheme, sobol_shares.h)
  LaySettings lay;
  DrawOff way = DrawOff::side;  // how the payoff of its figures is drawn off; over an end takes half as long again

  [[nodiscard]] bool is_grid() const { return !axes.empty(); }
  [[nodiscard]] std::size_t rows() const;
  // The keys that change, in the order of a row's values.
  [[nodiscard]] std::vector<std::string> paths() const;
};

// The verdict on a row's build (verdict.h), with the limits that the plan has with its values.
struct RowVerdict {
  Grade grade = Grade::good;
  std::string decides;  // "valley, right flange": when good, what is nearest to its limit
  std::string reason;   // a sentence without its stop
};

struct StudyRow {
  std::size_t index = 0;
  std::vector<double> values;
  // By outcome_figures(); empty where the plan is not sound with those values.
  std::vector<double> figures;
  // None where there are no figures, or where a study was kept before it had verdicts.
  std::optional<RowVerdict> verdict;
};

struct Study {
  PlanDraft plan;
  StudySpec spec;
  std::vector<StudyRow> rows;  // by rising index; not all of them in a shard

  [[nodiscard]] bool complete() const { return rows.size() == spec.rows(); }
  // Place of a figure in the rows. Precondition: there is one of that key.
  [[nodiscard]] static std::size_t figure(std::string_view key);
};

// A row's values by its number. A progress can be cancelled meanwhile; there are no values then.
[[nodiscard]] std::vector<std::vector<double>> study_points(const StudySpec& spec,
                                                            const Progress* progress = nullptr);

// The plan that a row stands for, to be opened.
[[nodiscard]] PlanDraft row_plan(const PlanDraft& plan, const StudySpec& spec, const std::vector<double>& values,
                                 LaySettings& lay);

// The tolerances that a plan has of its own: fiber diameter (uniform), and the scatter of its strokes, where it has
// pitch or stop scatter.
[[nodiscard]] std::vector<Tolerance> own_tolerances(const PlanDraft& plan);

// Issues of a spec: unknown keys, nothing to vary, ranges outside of what a plan may have, too many rows.
[[nodiscard]] Issues check_study(const PlanDraft& plan, const StudySpec& spec);

// Lays rows `shard`, `shard + shards`, ... (0 of 1: all). Errors: of check_study, or cancelled (`stopped_text`).
[[nodiscard]] Result<Study> run_study(const Plan& plan, const StudySpec& spec, std::size_t shard, std::size_t shards,
                                      int threads, Progress& progress);

// Shards put together. Errors: of different studies, a row twice, or rows missing.
[[nodiscard]] Result<Study> merged(std::vector<Study> shards);

}  // namespace laywright
