#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "advise/study.h"
#include "advise/study_statistics.h"
#include "narrow_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict_words.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

StudySpec grid() {
  StudySpec spec;
  spec.axes = {{"traverse.pitch", 0.25, 0.28, 4}, {"traverse.left_stop", 0.0, 0.2, 2}};
  spec.lay.fidelity = 0.5;
  return spec;
}

StudySpec tolerances(int samples) {
  StudySpec spec;
  spec.tolerances = {{"fiber.diameter", Tolerance::Law::uniform, 0.25, 0.005},
                     {"traverse.pitch", Tolerance::Law::normal, 0.26, 0.002}};
  spec.samples = samples;
  spec.lay.fidelity = 0.25;
  return spec;
}

PlanDraft study_draft() {
  PlanDraft draft = narrow_draft();
  draft.wind.turns = 120.0;
  return draft;
}

Study run(const StudySpec& spec, std::size_t shard = 0, std::size_t shards = 1, int threads = 2) {
  Progress progress;
  Result<Study> study = run_study(checked(study_draft()), spec, shard, shards, threads, progress);
  REQUIRE(study.ok());
  return std::move(study).value();
}

bool same_rows(const Study& a, const Study& b) {
  return std::equal(a.rows.begin(), a.rows.end(), b.rows.begin(), b.rows.end(),
                    [](const StudyRow& x, const StudyRow& y) {
                      return x.index == y.index && x.values == y.values && x.figures == y.figures &&
                             x.verdict->grade == y.verdict->grade && x.verdict->reason == y.verdict->reason;
                    });
}

}  // namespace

TEST_CASE("a grid has every pair of values, the second key fastest, both ends met") {
  const auto points = study_points(grid());
  REQUIRE(points.size() == 8);
  CHECK(points[0] == std::vector<double>{0.25, 0.0});
  CHECK(points[1] == std::vector<double>{0.25, 0.2});
  CHECK(points[7] == std::vector<double>{0.28, 0.2});
  CHECK(points[2][0] == Approx(0.26));
}

TEST_CASE("samples of tolerances follow their laws, in Saltelli's order") {
  const auto points = study_points(tolerances(512));
  REQUIRE(points.size() == 512 * 4);
  double sum = 0.0, squares = 0.0;
  for (std::size_t s = 0; s < 512; ++s) {
    const auto &a = points[4 * s], &b = points[4 * s + 1];
    CHECK(points[4 * s + 2] == std::vector<double>{b[0], a[1]});
    CHECK(points[4 * s + 3] == std::vector<double>{a[0], b[1]});
    CHECK(std::abs(a[0] - 0.25) <= 0.005);
    sum += a[1];
    squares += (a[1] - 0.26) * (a[1] - 0.26);
  }
  CHECK(sum / 512.0 == Approx(0.26).margin(2e-5));
  CHECK(std::sqrt(squares / 512.0) == Approx(0.002).epsilon(0.03));
}

TEST_CASE("a study is the same on one thread and on two, and its shards together are the whole") {
  for (const StudySpec& spec : {grid(), tolerances(4)}) {
    const Study whole = run(spec, 0, 1, 2);
    CHECK(same_rows(whole, run(spec, 0, 1, 1)));
    const Result<Study> merged_again = merged({run(spec, 2, 3), run(spec, 0, 3), run(spec, 1, 3)});
    REQUIRE(merged_again.ok());
    CHECK(same_rows(whole, merged_again.value()));
    CHECK_FALSE(merged({run(spec, 0, 3), run(spec, 1, 3)}).ok());
    CHECK_FALSE(merged({run(spec, 0, 2), run(spec, 0, 2), run(spec, 1, 2)}).ok());
  }
  StudySpec other = grid();
  other.lay.seed = 2;
  CHECK_FALSE(merged({run(grid(), 0, 2), run(other, 1, 2)}).ok());
}

TEST_CASE("a row is the plan laid with its values") {
  const Study study = run(grid());
  const StudyRow& row = study.rows[5];
  LaySettings settings = study.spec.lay;
  const Wound again = wound(row_plan(study.plan, study.spec, row.values, settings), settings);
  CHECK(row.figures[Study::figure("outer_diameter_greatest_mm")] == again.measurements.outer_diameter.greatest_mm);
  CHECK(row.figures[Study::figure("fill_factor")] == again.measurements.fill_factor);
}

TEST_CASE("a row has the verdict on its build, with the limits of its own values") {
  // The right stop from where the fiber touches the flange to 3 mm further in: at last a valley is left there.
  PlanDraft draft = narrow_draft();
  StudySpec spec;
  spec.axes = {{"traverse.right_stop", 0.08, 3.0, 3}};
  Progress progress;
  const Result<Study> study = run_study(checked(draft), spec, 0, 1, 2, progress);
  REQUIRE(study.ok());
  for (const StudyRow& row : study.value().rows) {
    LaySettings settings;
    const Wound again = wound(row_plan(draft, spec, row.values, settings), settings);
    const TakeupRun run = take_up(again.plan, again.build, again.measurements, progress);
    const WindVerdict verdict = verdict_of(again.plan, again.build, again.measurements, &run);
    REQUIRE(row.verdict);
    CHECK(row.verdict->grade == verdict.grade);
    CHECK(row.verdict->reason == verdict.reason);
    CHECK(row.verdict->decides == name_of(verdict.checks[verdict.deciding]));
  }
  CHECK(study.value().rows.back().verdict->grade == Grade::do_not_wind);
  const GradeCount count = count_grades(study.value().rows);
  CHECK(count.judged() == 3);
  CHECK(count.good() < 3);
}

TEST_CASE("tolerances: the outer diameter of a first layer scatters as twice the fiber's diameter") {
  PlanDraft draft = narrow_draft();
  draft.wind.turns = 40.0;  // of 46: over the whole middle
  Progress progress;
  const Result<Study> study = run_study(checked(draft), tolerances(24), 0, 1, 2, progress);
  REQUIRE(study.ok());
  const ToleranceStatistics statistics = tolerance_statistics(study.value());
  CHECK(statistics.winds == 48);
  const FigureSpread& middle = statistics.spreads[Study::figure("outer_diameter_middle_mm")];
  // Barrel and two diameters; 5 % and 95 % of a uniform law lie at 0.9 of its half width.
  CHECK(middle.p50 == Approx(150.5).margin(0.002));
  CHECK(middle.p5 == Approx(150.5 - 2.0 * 0.9 * 0.005).margin(0.0015));
  CHECK(middle.p95 == Approx(150.5 + 2.0 * 0.9 * 0.005).margin(0.0015));
  REQUIRE(statistics.shares.size() == 2);
  CHECK(statistics.shares[0].total > statistics.shares[1].total);
  CHECK(statistics.grades.judged() == 48);
  CHECK(statistics.good_share == Approx(static_cast<double>(statistics.grades.good()) / 48.0));
  CHECK(statistics.good_interval[0] <= statistics.good_share);
  CHECK(statistics.good_interval[1] >= statistics.good_share);
}

TEST_CASE("studies that make no sense are refused") {
  const PlanDraft plan = narrow_draft();
  StudySpec none, unknown = grid(), choice = grid(), twice = grid(), outside = grid();
  unknown.axes[0].path = "traverse.pich";
  choice.axes[0].path = "traverse.start";
  twice.axes[1] = twice.axes[0];
  outside.axes[0].from = -1.0;
  for (const StudySpec& spec : {none, unknown, choice, twice, outside}) CHECK_FALSE(check_study(plan, spec).empty());
  CHECK(check_study(plan, grid()).empty());
}

TEST_CASE("a study is stopped before its first build, too") {
  Progress stopped;
  stopped.cancel();
  CHECK(study_points(tolerances(1'000'000), &stopped).empty());
  CHECK(study_points(tolerances(8)).size() == 8 * (2 + tolerances(8).tolerances.size()));
}

TEST_CASE("a row tells how its wind comes off, over the end that the study says") {
  PlanDraft draft = narrow_draft();
  draft.wind.turns = 120.0;
  StudySpec spec;
  spec.axes = {{"traverse.pitch", 0.26, 0.6, 2}};
  spec.lay.fidelity = 0.5;
  const auto forces_of = [&](DrawOff way) {
    spec.way = way;
    Progress progress;
    const Result<Study> study = run_study(checked(draft), spec, 0, 1, 2, progress);
    REQUIRE(study.ok());
    return std::pair{study.value(), study.value().rows[1].figures[Study::figure("payoff_force")]};
  };
  const auto [side, side_force] = forces_of(DrawOff::side);
  const auto [end, end_force] = forces_of(DrawOff::over_left);
  LaySettings settings = spec.lay;
  const Wound again = wound(row_plan(side.plan, spec, side.rows[1].values, settings), settings);
  Progress progress;
  PayoffSettings over_left;
  over_left.way = DrawOff::over_left;
  const PayoffRun run = pay_off(again.plan, again.build, over_left, progress);
  CHECK(side_force == pay_off(again.plan, again.build, {}, progress).greatest);
  CHECK(end_force == run.greatest);
  CHECK(end_force > side_force);
  CHECK(end.rows[1].figures[Study::figure("payoff_catches")] == run.catch_count);
  CHECK(end.rows[1].figures[Study::figure("payoff_caught_m")] == Approx(run.caught_mm / 1e3));
  // The verdict's own payoff stays that off the side.
  CHECK(side.rows[1].verdict->reason == end.rows[1].verdict->reason);
  CHECK_FALSE(merged({side, end}).ok());
}
