#include "follow/follow.h"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "follow/checklist.h"
#include "hidden_flaw.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// A third of the way.
constexpr int layers_read = 4;

const NowSet* set_at(const Followed& followed, const std::string& path) {
  const auto& all = followed.change.settings;
  const auto found = std::find_if(all.begin(), all.end(), [&](const NowSet& each) { return each.path == path; });
  return found == all.end() ? nullptr : &*found;
}

// The one setting that most likely is off. Fails where there are several.
const Fitted& named(const Followed& followed) {
  REQUIRE_FALSE(followed.on_plan);
  REQUIRE(followed.likely);
  INFO(followed.likely->fit.text);
  REQUIRE(followed.likely->fit.fitted.size() == 1);
  return followed.likely->fit.fitted.front();
}

// What is really there (the flaw, not what was found of it), wound on with the change that was proposed and without.
std::vector<std::optional<Forecast>> wound_on(const PlanDraft& hidden, const Followed& followed) {
  Progress progress;
  return forecast(checked(hidden), {MidwindChange{}, followed.change.of_wind}, follow_settings().lay, 2, 2,
                  progress);
}

// By the verdict's figures, mean over draws; the same of what is told.
void check_better_with_the_change(const PlanDraft& hidden, const Followed& followed) {
  const auto laid = wound_on(hidden, followed);
  REQUIRE((laid[0] && laid[1]));
  CHECK(laid[1]->cost < laid[0]->cost);
  CHECK(laid[1]->verdict.grade <= laid[0]->verdict.grade);
  REQUIRE((followed.unchanged && followed.changed));
  CHECK(followed.changed->cost < followed.unchanged->cost);
}

// Of a layer that lies well behind the change.
double late_layer_turns(const Forecast& forecast) { return forecast.measurements->layers[8].turns; }

}  // namespace

TEST_CASE("a wind on plan is told to be, and nothing is to be changed") {
  const PlanDraft plan = followed_draft();
  for (const std::uint64_t seed : {3U, 4U, 5U}) {
    const Followed f = followed(plan, read_off(plan, layers_read, seed));
    INFO("most off: " << f.beside.most_off().observation.words() << ", chance " << f.beside.chance);
    CHECK(f.on_plan);
    CHECK_FALSE(f.likely);
    CHECK(f.change.settings.empty());
    CHECK(f.unchanged);
    CHECK_FALSE(f.changed);
    CHECK(f.at.layer == layers_read + 1);
  }
}

TEST_CASE("a right stop that turns late by 0.3 mm is named, and set nearer to its flange by as much") {
  const PlanDraft plan = followed_draft();
  PlanDraft hidden = plan;
  hidden.traverse.right_stop_mm += 0.3;
  const Followed f = followed(plan, read_off(hidden, layers_read, 7));
  CHECK(f.beside.most_off().observation.what == "diameter right");
  const Fitted& found = named(f);
  CHECK(found.unknown.path == "traverse.right_stop");
  CHECK(found.value == Approx(hidden.traverse.right_stop_mm).margin(0.04));
  const NowSet* set = set_at(f, "traverse.right_stop");
  REQUIRE(set != nullptr);
  CHECK(set->to - set->from == Approx(-0.3).margin(0.04));
  CHECK(f.change.of_wind.right_stop_mm == set->to - set->from);
  CHECK(f.change.of_wind.from_turn == f.at.turn);
  check_better_with_the_change(hidden, f);
}

TEST_CASE("a pitch that is 2 % off is named, and set lower by as much") {
  const PlanDraft plan = followed_draft();
  PlanDraft hidden = plan;
  hidden.traverse.pitch_mm *= 1.02;
  const Followed f = followed(plan, read_off(hidden, layers_read, 7));
  const Fitted& found = named(f);
  CHECK(found.unknown.path == "traverse.pitch");
  CHECK(found.value == Approx(hidden.traverse.pitch_mm).epsilon(0.006));
  CHECK(f.change.of_wind.pitch_factor == Approx(1.0 / 1.02).epsilon(0.006));
  REQUIRE((f.unchanged && f.changed));
  CHECK(f.changed->cost < f.unchanged->cost);
  // By how much so little is better depends on the draw; its layers are as planned again.
  const auto laid = wound_on(hidden, f);
  REQUIRE((laid[0] && laid[1]));
  const double planned = 13.8 / 0.26;
  CHECK(late_layer_turns(*laid[0]) == Approx(planned / 1.02).epsilon(0.006));
  CHECK(late_layer_turns(*laid[1]) == Approx(planned).epsilon(0.006));
}

TEST_CASE("lost motion is named, and the stops make up for it where no dwell can be made shorter") {
  const PlanDraft plan = followed_draft();
  PlanDraft hidden = plan;
  hidden.traverse.reversal.lost_motion_mm = 0.3;
  const Followed f = followed(plan, read_off(hidden, layers_read, 7));
  const Fitted& found = named(f);
  CHECK(found.unknown.path == "traverse.reversal.lost_motion");
  CHECK(found.value == Approx(0.3).margin(0.1));
  CHECK(set_at(f, "traverse.reversal.lost_motion") == nullptr);  // nobody sets it
  CHECK(f.change.of_wind.left_stop_mm == Approx(f.change.of_wind.right_stop_mm));
  check_better_with_the_change(hidden, f);
}

TEST_CASE("what the readings cannot tell apart is said") {
  // Turns of a layer are stroke over pitch: the pitch, or either stop, or both.
  const PlanDraft plan = followed_draft();
  PlanDraft hidden = plan;
  hidden.traverse.pitch_mm *= 1.03;
  AsWound read = read_off(hidden, layers_read, 7);
  for (Reading& reading : read.readings) reading.diameter_mm = {};
  const Followed f = followed(plan, read);
  REQUIRE(f.likely);
  const auto told = [&](const char* path) {
    const auto of = [&](const Fit& fit) { return fit.fitted.size() == 1 && fit.fitted[0].unknown.path == path; };
    return of(f.likely->fit) || std::any_of(f.likely->as_likely.begin(), f.likely->as_likely.end(), of);
  };
  CHECK(told("traverse.pitch"));
  CHECK((told("traverse.left_stop") || told("traverse.right_stop")));
  CHECK_FALSE(f.likely->as_likely.empty());
}

TEST_CASE("a change is rounded to the dial, and left out where it moves it by no step") {
  PlanDraft draft = followed_draft();
  Dial dial;
  dial.unit = "div";
  dial.per_unit = 0.25;
  dial.at_zero = 0.1;
  dial.step = 1.0;
  draft.machine.dials["right_stop"] = dial;
  const Plan plan = checked(draft);
  Fit fit;
  fit.fitted.push_back({{"traverse.right_stop", "right stop", 0.1, 0.25, -9.0, 9.0}, 0.4, 0.02, 0.36, 0.44, true});
  fit.corrections.push_back({"traverse.right_stop", -0.2});
  const NowChange change = change_of(plan, fit, 3);
  REQUIRE(change.settings.size() == 1);
  CHECK(change.settings[0].to == Approx(-0.15));  // a step of 0.25 mm, the nearest to 0.3
  CHECK(change.settings[0].from_reading == "0 div");
  CHECK(change.settings[0].to_reading == "-1 div");
  CHECK(change.of_wind.right_stop_mm == Approx(-0.25));
  fit.corrections[0].set_to = 0.0;  // less than half a step
  CHECK(change_of(plan, fit, 3).settings.empty());
}

TEST_CASE("where a step of the wind has set it otherwise, the change is from there") {
  PlanDraft draft = followed_draft();
  draft.wind.steps.push_back({3, 0.27, {}, 0.2});
  const Plan plan = checked(draft);
  Fit fit;
  fit.fitted.push_back({{"traverse.right_stop", "right stop", 0.1, 0.25, -9.0, 9.0}, 0.4, 0.02, 0.36, 0.44, true});
  fit.fitted.push_back({{"traverse.pitch", "pitch", 0.26, 0.01, 0.1, 1.0}, 0.2652, 0.001, 0.264, 0.267, true});
  fit.corrections = {{"traverse.right_stop", -0.2}, {"traverse.pitch", 0.26 / 1.02}};
  const NowChange early = change_of(plan, fit, 2), late = change_of(plan, fit, 3);
  CHECK(early.settings[0].from == 0.1);
  CHECK(late.settings[0].from == 0.2);
  CHECK(late.settings[0].to == Approx(-0.1));
  CHECK(late.settings[1].from == 0.27);
  CHECK(late.settings[1].to == Approx(0.27 / 1.02));
  CHECK(early.of_wind.pitch_factor == Approx(late.of_wind.pitch_factor));
}

TEST_CASE("the checklist has at each checkpoint what the plan reads there, and as the readings are judged") {
  const Plan plan = checked(followed_draft());
  const FollowSettings settings = follow_settings();
  Progress progress;
  const Build build = lay(plan, settings.lay, progress).value();
  const TakeupRun run = take_up(plan, build, measure(plan, build, progress), progress);
  const Result<std::vector<ChecklistRow>> rows =
      checklist(plan, run.checkpoints, settings.errors, settings.lay, 3, 2, progress);
  REQUIRE(rows.ok());
  REQUIRE(rows.value().size() == run.checkpoints.size());
  const ChecklistRow& second = rows.value()[1];
  CHECK(second.at.layer == 2);
  REQUIRE(second.read.size() == 6);
  CHECK(second.read[0].observation.what == "turns counted");
  CHECK(second.read[0].planned == Approx(second.at.turns).epsilon(0.005));
  CHECK(second.read[1].planned == Approx(second.at.length_mm).epsilon(0.005));
  CHECK(second.read[2].planned == Approx(second.at.outer_diameter_mm[0]).margin(0.05));
  CHECK(second.read[5].observation.what == "width");
  // Stops of 0.1 mm: half a fiber's width from there to the flange, less the lag.
  CHECK(second.read[5].planned == Approx(14.0 - 0.2 + 0.25).margin(0.15));
  CHECK(rows.value().back().at.at_end);
  CHECK(rows.value().back().read.size() == 4);
  const AsWound as_planned{"a.csv", {reading_at(plan, second.at)}};
  const Result<Beside> beside = beside_plan(plan, as_planned, settings.errors, settings.lay, 3, 2, progress);
  REQUIRE(beside.ok());
  CHECK(beside.value().readings[2].planned == Approx(second.read[2].planned));
}

TEST_CASE("a wind is followed until somebody stops it, and not without readings") {
  Progress progress;
  const Plan plan = checked(followed_draft());
  CHECK_FALSE(follow(plan, AsWound{}, follow_settings(), progress).ok());
  progress.cancel();
  const Result<Followed> stopped = follow(plan, read_off(followed_draft(), 2, 1), follow_settings(), progress);
  REQUIRE_FALSE(stopped.ok());
  CHECK(stopped.issues().front().what == stopped_text);
}
