// Advice on a machine whose dials go by steps.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "advise/improve.h"
#include "advise/movable_setting.h"
#include "advise/searchable_setting.h"
#include "advise/settable_step.h"
#include "advise/study.h"
#include "narrow_plan.h"
#include "plan/dialling.h"
#include "plan/plan_values.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// A pitch by teeth of 0.0125 mm, stops by fifths of a millimetre.
PlanDraft dialled_draft() {
  PlanDraft draft = narrow_draft();
  Dial pitch;
  pitch.unit = "teeth";
  pitch.per_unit = 0.0125;
  pitch.step = 1.0;
  draft.machine.dials["pitch"] = pitch;
  Dial stop;
  stop.unit = "mm";
  stop.per_unit = 1.0;
  stop.step = 0.2;
  draft.machine.dials["left_stop"] = stop;
  return draft;
}

bool on_dial(double value, double step) { return std::abs(std::remainder(value, step)) < 1e-6 * step; }

}  // namespace

TEST_CASE("advice moves by whole steps of a dial, and no finer than it would without") {
  const PlanDraft draft = check(dialled_draft()).value().draft();
  CHECK(settable_step(draft, "traverse.pitch", 0.001) == Approx(0.0125));
  CHECK(settable_step(draft, "traverse.pitch", 0.0125) == Approx(0.0125));
  CHECK(settable_step(draft, "traverse.pitch", 0.02) == Approx(0.025));
  CHECK(settable_step(draft, "traverse.right_stop", 0.02) == 0.02);  // no dial
  const std::vector<SearchableSetting> searchables = searchables_of(draft, {}, false).value();
  for (const SearchableSetting& each : searchables) {
    if (each.path == "traverse.pitch") CHECK(each.step == Approx(0.0125));
    if (each.path == "traverse.left_stop") CHECK(each.step == Approx(0.2));
  }
  for (const MovableSetting& each : movables_of(draft)) {
    if (each.parts.front().path == "traverse.pitch") CHECK(on_dial(each.step, 0.0125));
    if (each.parts.front().path == "traverse.left_stop") CHECK(on_dial(each.step, 0.2));
  }
}

TEST_CASE("what improve proposes can be dialled") {
  PlanDraft draft = dialled_draft();
  draft.traverse.pitch_mm = 0.31;  // too coarse
  draft.wind.turns = 230.0;
  ImproveSettings settings;
  settings.trials = 40;
  settings.lay.fidelity = 0.5;
  settings.threads = 2;
  Progress progress;
  const Result<Improvement> found = improve(checked(draft), settings, progress);
  REQUIRE(found.ok());
  REQUIRE_FALSE(found.value().best.empty());
  for (const Proposal& each : found.value().best) {
    CHECK(on_dial(each.draft.traverse.pitch_mm, 0.0125));
    CHECK(on_dial(each.draft.traverse.left_stop_mm, 0.2));
    const Dialling again = dial(each.draft);
    for (const DialledSetting& setting : again.settings) CHECK_FALSE(setting.moved());
  }
}

// Both pitches are 21 teeth: a study that rounded them would find the same of both.
TEST_CASE("a study lays what lies between the steps") {
  PlanDraft draft = dialled_draft();
  draft.wind.turns = 120.0;
  StudySpec spec;
  spec.axes = {{"traverse.pitch", 0.258, 0.268, 2}};
  spec.lay.fidelity = 0.5;
  Progress progress;
  const Result<Study> study = run_study(checked(draft), spec, 0, 1, 1, progress);
  REQUIRE(study.ok());
  REQUIRE(study.value().rows.size() == 2);
  CHECK(study.value().rows[0].figures != study.value().rows[1].figures);
}
