// Winds that the model lays: what holds for all of them, and how payoff follows the settings.
#include <cmath>

#include <catch2/catch.hpp>

#include "lay/plans.h"
#include "lay/random_plans.h"
#include "payoff/parts.h"
#include "payoff/payoff.h"
#include "plan/plan_file.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

PayoffRun paid_off(const PlanDraft& draft, DrawOff way, const LaySettings& settings = {}) {
  Progress progress;
  return pay_off(sound(draft), laid(draft, settings), {way, {}, false}, progress);
}

}  // namespace

TEST_CASE("fiber comes from above: whatever is laid, no earlier turn lies over a later one") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const PlanDraft draft = random_plans::draft(seed);
    const Plan plan = random_plans::plan_of(draft);
    Progress progress;
    const Unwinding found = unwind(plan, random_plans::laid(plan), DrawOff::side, progress);
    INFO(random_plans::in_words(draft));
    CHECK(found.covered.empty());
  }
}

TEST_CASE("nor where the fiber's diameter scatters: each turn counts as thick as it is") {
  random_plans::Wanted wanted;
  wanted.diameter_scatter = true;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const PlanDraft draft = random_plans::draft(seed, wanted);
    const Plan plan = random_plans::plan_of(draft);
    Progress progress;
    const Unwinding found = unwind(plan, random_plans::laid(plan), DrawOff::side, progress);
    INFO(random_plans::in_words(draft));
    CHECK(found.covered.empty());
  }
}

TEST_CASE("a good even wind pays off without a catch") {
  const Result<Plan> plan = load_plan(std::string(LAYWRIGHT_SOURCE_DIR) + "/samples/even.lay.toml");
  REQUIRE(plan.ok());
  PlanDraft draft = plan.value().draft();
  draft.wind.length_mm = 1.0e6;
  const PayoffRun run = paid_off(draft, DrawOff::side);
  CHECK(run.catch_count == 0);
  CHECK(run.greatest < 1.1);
}

TEST_CASE("more friction holds more, on either way") {
  PlanDraft draft = plain_draft();
  draft.wind.turns = 1500.0;
  for (const DrawOff way : {DrawOff::side, DrawOff::over_left}) {
    double before = 1.0;
    for (const double friction : {0.3, 0.5, 0.7}) {
      draft.fiber.friction = friction;
      const double greatest = paid_off(draft, way).greatest;
      CHECK(greatest > before);
      before = greatest;
    }
  }
}

TEST_CASE("over an end, a close wind is harder to draw off than a crossed one") {
  // General textile practice: parallel-wound flanged packages are unwound from the side, cross-wound ones over the end (from
  // memory).
  PlanDraft close = plain_draft(), crossed = plain_draft();
  close.wind.turns = crossed.wind.turns = 300.0;
  crossed.traverse.pitch_mm = 12.37;
  const PayoffRun a = paid_off(close, DrawOff::over_left), b = paid_off(crossed, DrawOff::over_left);
  CHECK(a.mean - 1.0 > 1.1 * (b.mean - 1.0));
}

TEST_CASE("a mirrored wind pays off over the other end as the first does over this one") {
  PlanDraft draft = plain_draft();
  draft.wind.turns = 800.0;
  PlanDraft mirrored = draft;
  mirrored.traverse.start = Side::right;
  const PayoffRun a = paid_off(draft, DrawOff::over_left), b = paid_off(mirrored, DrawOff::over_right);
  CHECK(a.greatest == Approx(b.greatest).epsilon(0.02));
  CHECK(a.mean == Approx(b.mean).epsilon(0.01));
}

TEST_CASE("figures hardly depend on the number of stations") {
  PlanDraft draft = plain_draft();
  draft.wind.turns = 1500.0;
  const PayoffRun a = paid_off(draft, DrawOff::over_left), b = paid_off(draft, DrawOff::over_left, {1, 2.0});
  CHECK(a.mean == Approx(b.mean).epsilon(0.02));
  CHECK(a.greatest == Approx(b.greatest).epsilon(0.05));
}
