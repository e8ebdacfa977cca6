#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "advise/fit_words.h"
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
  // None says part of another again.
  for (const auto& one : fit.not_told_apart) {
    for (const auto& other : fit.not_told_apart) {
      const bool within = std::all_of(one.begin(), one.end(), [&](const std::string& each) {
        return std::find(other.begin(), other.end(), each) != other.end();
      });
      CHECK((&one == &other || !within));
    }
  }
  CHECK_THAT(fit.text,
             Catch::Matchers::Contains("cannot tell") && Catch::Matchers::Contains("say nothing of the fiber"));
}

TEST_CASE("a fitted value is told, and set, to half of what it may be off, and no finer") {
  Fitted stop{{"traverse.left_stop", "left stop", 0.1, 0.06, -1.0, 1.0}, 0.0439012, 0.053, -0.0565, 0.1443, false};
  // Half of .053 is .0265: hundredths.
  CHECK(step_told(stop) == Approx(0.01));
  const Plan plan = checked(narrow_draft());
  CHECK(told_value(plan, stop, stop.value) == "0.04 mm");
  CHECK(told_value(plan, stop, stop.low) == "-0.06 mm");
  stop.sigma = 0.0012;
  CHECK(told_value(plan, stop, 0.257613) == "0.2576 mm");
}

TEST_CASE("what the readings leave open is said once of all settings, and once of those they say nothing of") {
  Fit fit;
  fit.not_told_apart = {{"friction"}, {"left stop", "right stop", "dwell"}};
  const std::string text = conclusion_of(checked(narrow_draft()), fit);
  CHECK_THAT(text, Catch::Matchers::Contains("say nothing of the friction") &&
                       Catch::Matchers::Contains("the left stop, right stop and dwell"));
  CHECK(text.find("tell apart") == text.rfind("tell apart"));
}

TEST_CASE("a table without anything to compare is refused") {
  AsWound nothing;
  nothing.readings.emplace_back().layer = 3;
  Progress progress;
  CHECK_FALSE(fit(checked(narrow_draft()), nothing, {}, progress).ok());
}
