#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "synthetic_spool.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

const Fitted& fitted(const Fit& fit, const std::string& path) {
  return *std::find_if(fit.fitted.begin(), fit.fitted.end(),
                       [&](const Fitted& f) { return f.unknown.path == path; });
}

Fit fit_to(const PlanDraft& plan, const AsWound& spool, FitSettings settings) {
  Progress progress;
  settings.lay.fidelity = 0.5;
  Result<Fit> result = fit(checked(plan), spool, settings, progress);
  REQUIRE(result.ok());
  return std::move(result).value();
}

}  // namespace

TEST_CASE("pitch within 0.5 % and fiber diameter within 1 % from five layers of readings with 1 % noise") {
  PlanDraft plan = narrow_draft();
  plan.spool.inside_width_mm = 40.0;
  PlanDraft hidden = plan;
  hidden.traverse.pitch_mm = 0.26 * 1.013;
  hidden.fiber.diameter_mm = 0.25 * 1.015;
  hidden.traverse.left_stop_mm += 0.03;
  const SpoolNoise noise = one_percent(plan);
  const Fit fit = fit_to(plan, synthetic_spool(hidden, 5, noise, 11), believing(noise, {}));
  INFO(fit.text);
  CHECK(fitted(fit, "traverse.pitch").value == Approx(hidden.traverse.pitch_mm).epsilon(0.005));
  CHECK(fitted(fit, "fiber.diameter").value == Approx(hidden.fiber.diameter_mm).epsilon(0.01));
  // The next spool: the pitch in proportion to the fiber as it is, and as much less as the machine gives too much.
  const auto pitch = std::find_if(fit.corrections.begin(), fit.corrections.end(),
                                  [](const Correction& c) { return c.path == "traverse.pitch"; });
  REQUIRE(pitch != fit.corrections.end());
  CHECK(pitch->set_to == Approx(0.26 * 1.015 / 1.013).epsilon(0.01));
}

TEST_CASE("95 % intervals hold the hidden values about as often as they should") {
  const PlanDraft plan = narrow_draft();
  const SpoolNoise noise = one_percent(plan);
  // Two unknowns are told to be exact, which makes it quick.
  const FitSettings settings = believing(noise, {{"traverse.reversal.turns", 0.0}, {"fiber.friction", 0.0}});
  const Coverage coverage = coverage_of(plan, noise, settings, 8);
  INFO(coverage.held << " of " << coverage.intervals);
  // 32 intervals at 95 %: fewer than 26 would come less than once in a thousand times.
  CHECK(coverage.intervals == 32);
  CHECK(coverage.held >= 26);
}

TEST_CASE("what the readings cannot tell is said, not guessed") {
  const PlanDraft plan = narrow_draft();
  AsWound turns_only = synthetic_spool(plan, 4, one_percent(plan), 3);
  for (Reading& reading : turns_only.readings) reading.diameter_mm = {};
  // Turns of a layer are stroke over pitch: a pitch, or stops, that are off look the same.
  const FitSettings settings = believing(one_percent(plan), {{"traverse.left_stop", 1.0},
                                                             {"traverse.right_stop", 1.0},
                                                             {"traverse.reversal.turns", 0.0},
                                                             {"fiber.friction", 0.0}});
  const Fit fit = fit_to(plan, turns_only, settings);
  INFO(fit.text);
  CHECK_FALSE(fitted(fit, "fiber.diameter").told_by_readings);
  const auto of_both = [](const std::vector<std::string>& group) {
    return std::count(group.begin(), group.end(), "left stop") +
               std::count(group.begin(), group.end(), "right stop") +
               std::count(group.begin(), group.end(), "pitch") >=
           2;
  };
  CHECK(std::any_of(fit.not_told_apart.begin(), fit.not_told_apart.end(), of_both));
  CHECK_THAT(fit.text,
             Catch::Matchers::Contains("cannot tell") && Catch::Matchers::Contains("say nothing of the fiber"));
}

TEST_CASE("a table without anything to compare is refused") {
  AsWound nothing;
  nothing.readings.push_back({1, 3, false, {}, {}, {}, {}});
  Progress progress;
  CHECK_FALSE(fit(checked(narrow_draft()), nothing, {}, progress).ok());
}
