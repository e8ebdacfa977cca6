#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "advise/begin.h"
#include "advise/judged.h"
#include "advise/robust.h"
#include "base/quantity.h"

using namespace laywright;

namespace {

// A short wind of thick fiber.
PlanDraft a_draft() {
  PlanDraft draft;
  draft.spool.barrel_diameter_mm = 100.0;
  draft.spool.flange_diameter_mm = 160.0;
  draft.spool.inside_width_mm = 50.0;
  draft.fiber.diameter_mm = 1.0;
  draft.fiber.friction = 0.5;
  draft.traverse.free_length_mm = 50.0;
  draft.wind.length_mm = 60'000.0;
  return draft;
}

BeginSettings quick_begin() {
  BeginSettings settings;
  settings.threads = 2;
  settings.trials = 40;
  settings.given = {"traverse.free_length"};
  return settings;
}

Beginning begun(const PlanDraft& draft, const BeginSettings& settings) {
  Progress progress;
  const Result<Beginning> result = begin_plan(draft, settings, progress);
  REQUIRE(result.ok());
  return result.value();
}

WindVerdict verdict_again(const PlanDraft& draft) {
  Progress progress;
  const Result<Plan> plan = check(draft);
  REQUIRE(plan.ok());
  const auto first = judge_plan(draft, {}, progress);
  REQUIRE(first);
  const auto all = over_draws(plan.value(), {}, first->verdict, usual_draws, 2, progress);
  REQUIRE(all);
  return *all;
}

}  // namespace

TEST_CASE("what is proposed is a plan whose wind is what its verdict says") {
  const Beginning beginning = begun(a_draft(), quick_begin());
  CHECK(beginning.verdict.grade == Grade::good);
  CHECK(beginning.verdict.draws.size() == static_cast<std::size_t>(usual_draws));
  const WindVerdict again = verdict_again(beginning.draft);
  CHECK(again.grade == beginning.verdict.grade);
  CHECK(again.reason == beginning.verdict.reason);
}

TEST_CASE("usual settings that are good are taken, as a person would set them") {
  const Beginning beginning = begun(a_draft(), quick_begin());
  CHECK_FALSE(beginning.searched);
  // 1.04 d, the stops where the fiber reaches the flange: d/2 less 50 mm x 1.04 / (100 pi) x ln 2 = .385, in steps of .02.
  CHECK(beginning.draft.traverse.pitch_mm == 1.04);
  CHECK(beginning.draft.traverse.left_stop_mm == 0.38);
  CHECK(beginning.draft.traverse.right_stop_mm == 0.38);
  CHECK(beginning.draft.traverse.reversal.kind == ReversalKind::instant);
}

TEST_CASE("where usual settings are not good, better ones are searched for") {
  // A long free length and few turns beside one another: the turns at the flanges do not come out.
  PlanDraft draft = a_draft();
  draft.traverse.free_length_mm = 600.0;
  BeginSettings settings = quick_begin();
  settings.trials = 160;
  const Beginning beginning = begun(draft, settings);
  CHECK(beginning.searched);
  CHECK(beginning.verdict.grade == Grade::good);
  CHECK(verdict_again(beginning.draft).grade == Grade::good);
  CHECK(beginning.draft.traverse.free_length_mm == 600.0);
  // Nothing is left behind the last place of what is set.
  const Traverse& traverse = beginning.draft.traverse;
  for (const double set : {traverse.pitch_mm, traverse.left_stop_mm, traverse.right_stop_mm})
    CHECK(format_quantity(set, *find_unit("mm")).size() < std::string("-1.0451 mm").size());
}

TEST_CASE("what is given stays") {
  PlanDraft draft = a_draft();
  draft.traverse.pitch_mm = 1.6;
  draft.traverse.left_stop_mm = 0.4;
  BeginSettings settings = quick_begin();
  settings.given.insert(settings.given.end(), {"traverse.pitch", "traverse.left_stop"});
  const Beginning beginning = begun(draft, settings);
  CHECK(beginning.draft.traverse.pitch_mm == 1.6);
  CHECK(beginning.draft.traverse.left_stop_mm == 0.4);
  CHECK(beginning.verdict.grade != Grade::good);  // a pitch of 1.6 d leaves gaps
}

TEST_CASE("a length that does not fit is not searched for") {
  PlanDraft draft = a_draft();
  draft.wind.length_mm = 1e6;
  const Beginning beginning = begun(draft, quick_begin());
  CHECK_FALSE(beginning.searched);
  CHECK(beginning.verdict.grade == Grade::do_not_wind);
  CHECK(std::any_of(beginning.verdict.checks.begin(), beginning.verdict.checks.end(),
                    [](const Check& each) { return each.what == Weighed::planned_end; }));
}

TEST_CASE("a draft that is no plan is told, and a stopped beginning gives none") {
  PlanDraft draft = a_draft();
  draft.fiber.friction = -1.0;
  Progress progress;
  const Result<Beginning> wrong = begin_plan(draft, quick_begin(), progress);
  REQUIRE_FALSE(wrong.ok());
  CHECK(wrong.issues().front().key == "fiber.friction");
  Progress stopped;
  stopped.cancel();
  const Result<Beginning> none = begin_plan(a_draft(), quick_begin(), stopped);
  REQUIRE_FALSE(none.ok());
  CHECK(none.issues().front().what == stopped_text);
}
