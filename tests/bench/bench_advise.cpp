// Speed of studies, on one thread and on two, and what advice comes to on the sample plans: causes, better settings, and
// how often the intervals of a fit hold. Figures, not checks.
//
//   bench_advise             the study, of 20 x 20 builds
//   bench_advise study N     of N x N
//   bench_advise samples     cause and improve on each flawed sample (minutes)
//   bench_advise coverage    fits to 100 synthetic spools, or as many as are given (minutes)
#include <algorithm>
#include <chrono>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "advise/cause.h"
#include "advise/improve.h"
#include "advise/study.h"
#include "advise/synthetic_spool.h"
#include "jobs/parallel.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;

Plan sample(const char* name) {
  const Result<Plan> plan = load_plan(fmt::format("{}/{}.lay.toml", LAYWRIGHT_SAMPLES, name));
  if (!plan.ok()) throw std::runtime_error(to_text(plan.issues().front()));
  return plan.value();
}

double seconds_of(const Plan& plan, const StudySpec& spec, int threads) {
  Progress progress;
  const auto begin = std::chrono::steady_clock::now();
  const Result<Study> study = run_study(plan, spec, 0, 1, threads, progress);
  if (!study.ok()) throw std::runtime_error(to_text(study.issues().front()));
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

void time_study(int steps) {
  PlanDraft draft = sample("even").draft();
  draft.wind.length_mm = 2e6;
  const Plan plan = testing::checked(draft);
  StudySpec spec;
  spec.axes = {{"traverse.pitch", 0.25, 0.28, steps}, {"traverse.left_stop", -0.2, 0.2, steps}};
  spec.lay.fidelity = search_fidelity;
  const double two = seconds_of(plan, spec, 2), one = seconds_of(plan, spec, 1);
  fmt::print("study of {} builds of 2 km: {:.1f} s on two threads, {:.1f} s on one; {:.2f} times as fast\n",
             steps * steps, two, one, one / two);
}

void advise_samples() {
  for (const char* name : {"pitch-too-fine", "pitch-too-coarse", "turns-back-early", "turns-back-late", "long-dwell",
                           "loose-traverse", "whole-ratio"}) {
    const Plan plan = sample(name);
    const testing::Wound wind = testing::wound(plan.draft());
    Progress progress;
    fmt::print("\n{}\n", name);
    if (!wind.measurements.findings.empty()) {
      const Result<Explanation> cause =
          explain(plan, wind.build, wind.measurements, wind.measurements.findings.front(), {}, progress);
      fmt::print("  cause: {}\n", cause.value().text);
    }
    const Result<Improvement> better = improve(plan, {}, progress);
    fmt::print("  better: {}\n", better.value().text);
    for (const Proposal& each : better.value().best) {
      fmt::print("    {}\n", each.text);
    }
  }
}

// "98 of 100 within 0.5 %, middle 0.11 %, worst 0.62 %"
std::string in_words(std::vector<double> errors, double goal) {
  std::sort(errors.begin(), errors.end());
  const auto within = std::upper_bound(errors.begin(), errors.end(), goal) - errors.begin();
  return fmt::format("{} of {} within {} %, middle {:.2f} %, worst {:.2f} %", within, errors.size(), 100.0 * goal,
                     100.0 * errors[errors.size() / 2], 100.0 * errors.back());
}

void count_coverage(int spools) {
  PlanDraft plan = testing::narrow_draft();
  plan.spool.inside_width_mm = 40.0;
  const testing::SpoolNoise noise = testing::one_percent(plan);
  FitSettings settings = testing::believing(noise, {});
  settings.threads = threads_at_hand();
  const testing::Coverage coverage = testing::coverage_of(plan, noise, settings, spools);
  fmt::print("95 % intervals: {} of {} hold\n", coverage.held, coverage.intervals);
  fmt::print("pitch: {}\n", in_words(coverage.pitch_errors, 0.005));
  fmt::print("fiber diameter: {}\n", in_words(coverage.diameter_errors, 0.01));
}

}  // namespace

int main(int argc, char** argv) {
  const std::string_view what = argc > 1 ? argv[1] : "";
  if (what == "samples") {
    advise_samples();
  } else if (what == "coverage") {
    count_coverage(argc > 2 ? std::stoi(argv[2]) : 100);
  } else {
    time_study(what == "study" && argc > 2 ? std::stoi(argv[2]) : 20);
  }
}
