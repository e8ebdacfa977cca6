#include <algorithm>

#include <catch2/catch.hpp>

#include "advise/cause.h"
#include "advise/cause_search.h"
#include "advise/improve.h"
#include "advise/late_settings.h"
#include "narrow_plan.h"
#include "verdict/weigh.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// Laid well: see improve_test.
PlanDraft well_laid() {
  PlanDraft draft = narrow_draft();
  draft.traverse.free_length_mm = 40.0;
  draft.traverse.left_stop_mm = draft.traverse.right_stop_mm = 0.1;
  draft.fiber.max_tension_N = 4.0;
  draft.limits.pull = 0.14;  // no more than 0.56 N of them
  return draft;
}

ImproveSettings quick_late() {
  ImproveSettings settings;
  settings.trials = 20;
  settings.best = 2;
  settings.threads = 2;
  return settings;
}

Improvement improved(const PlanDraft& draft, const ImproveSettings& settings) {
  Progress progress;
  Result<Improvement> found = improve(checked(draft), settings, progress);
  REQUIRE(found.ok());
  UNSCOPED_INFO(found.value().text);
  return std::move(found).value();
}

ImproveSettings keeping_the_traverse() {
  ImproveSettings settings = quick_late();
  for (const char* path :
       {"traverse.pitch", "traverse.left_stop", "traverse.right_stop", "traverse.reversal.turns"}) {
    settings.requests.push_back({path, {}, {}, {}, true});
  }
  return settings;
}

const MovableSetting* movable_at(const std::vector<MovableSetting>& movables, const std::string& path) {
  const auto found = std::find_if(movables.begin(), movables.end(),
                                  [&](const MovableSetting& each) { return each.parts.front().path == path; });
  return found == movables.end() ? nullptr : &*found;
}

Check check_of(Weighed what, double value, double limit, bool at_least = false) {
  return {what, {}, value, limit, at_least, at_least ? value - limit : limit - value, Grade::good};
}

}  // namespace

TEST_CASE("a tension has room as far as fiber, lay and clutch keep their limits with their margin") {
  PlanDraft draft = well_laid();
  draft.wind.tension_N = 2.0;
  // 5 % of a limit is the margin of what is good: 4 N less 5 %; 0.8 N over 95 %; a clutch that needs .5 A of .6 A.
  const auto room = tension_room(
      draft, {check_of(Weighed::greatest_pull, 2.0, 4.0), check_of(Weighed::least_pull, 1.6, 0.64, true),
              check_of(Weighed::clutch_current, 0.5, 0.6)});
  REQUIRE(room);
  CHECK(room->high_N == Approx(2.0 * 0.6 / 0.5 * 0.95).epsilon(1e-4));
  CHECK(room->low_N == Approx(2.0 * 0.64 / 1.6 / 0.95).epsilon(1e-4));
  CHECK(room->has(2.0));

  // What the fiber bears is not known: no more than now.
  const auto unknown = tension_room(draft, {});
  REQUIRE(unknown);
  CHECK(unknown->high_N == 2.0);
  CHECK(unknown->low_N == Approx(0.5));
  // No tension is high enough for the one and low enough for the other.
  CHECK_FALSE(tension_room(
      draft, {check_of(Weighed::greatest_pull, 2.0, 1.0), check_of(Weighed::least_pull, 2.0, 1.0, true)}));
  draft.wind.tension_N.reset();
  CHECK_FALSE(tension_room(draft, {}));
}

TEST_CASE(
    "where the pull alone is wrong, another tension is proposed, within what the fiber bears, without a search") {
  PlanDraft draft = well_laid();
  draft.wind.tension_N = 0.8;
  const Improvement found = improved(draft, quick_late());
  CHECK_FALSE(found.leave_it);
  CHECK(found.plan.verdict.grade == Grade::do_not_wind);
  REQUIRE(found.best.size() == 1);
  const Proposal& best = found.best.front();
  CHECK(best.verdict.grade == Grade::good);
  CHECK(*best.draft.wind.tension_N <= 0.95 * 0.56);
  CHECK(*best.draft.wind.tension_N >= 0.9 * 0.95 * 0.56);
  CHECK(best.draft.traverse.pitch_mm == draft.traverse.pitch_mm);
  CHECK_THAT(best.text, Catch::Matchers::Contains("Set the tension to 0.52 N (now 0.8 N)") &&
                            Catch::Matchers::Contains("Good instead of do not wind"));
  CHECK(found.layers_tried == 0);
  // The plan is laid well on all draws; that does not make it good.
  CHECK(found.plan.good_draws == 0);
}

TEST_CASE("a tension that is to be kept is kept, and what is wrong is told") {
  PlanDraft draft = well_laid();
  draft.wind.tension_N = 0.8;
  ImproveSettings settings = quick_late();
  settings.requests.push_back({"wind.tension", {}, {}, {}, true});
  const Improvement found = improved(draft, settings);
  CHECK(found.leave_it);
  CHECK(found.best.empty());
  CHECK_THAT(found.text, Catch::Matchers::Contains("the fiber lies well on each of 5 draws") &&
                             Catch::Matchers::Contains("lower the tension"));
}

TEST_CASE("the side of the start is turned where the stops differ, and all else that may be turned does not do") {
  PlanDraft draft = well_laid();
  draft.wind.turns = 70.0;
  draft.traverse.left_stop_mm = 0.8;  // the first turn lies 2.7 d off its flange
  const Improvement found = improved(draft, keeping_the_traverse());
  REQUIRE_FALSE(found.best.empty());
  CHECK(found.best.front().draft.traverse.start == Side::right);
  CHECK(found.best.front().verdict.grade < found.plan.verdict.grade);
  CHECK_THAT(found.best.front().text, Catch::Matchers::Contains("the start to the right flange (now left)"));
  CHECK(found.trials < 30);
}

TEST_CASE("late settings that were not needed are neither turned nor told") {
  PlanDraft draft = well_laid();
  draft.wind.turns = 200.0;
  draft.traverse.left_stop_mm = 0.8;
  draft.wind.tension_N = 0.5;
  const Improvement found = improved(draft, quick_late());
  REQUIRE_FALSE(found.best.empty());
  REQUIRE(found.best.front().verdict.grade == Grade::good);
  for (const SearchableSetting& searchable : found.searchables) CHECK_FALSE(searchable.late);
  CHECK(found.best.front().values.size() == found.searchables.size());
  CHECK(*found.best.front().draft.wind.tension_N == 0.5);
  CHECK(found.best.front().draft.traverse.start == Side::left);
}

TEST_CASE("the start matters where both sides differ, the tension where the fiber rolls") {
  PlanDraft draft = well_laid();
  draft.wind.tension_N = 0.5;
  CHECK_FALSE(start_turns_lay(draft));
  CHECK(tension_turns_lay(draft));
  CHECK(movable_at(movables_of(draft), start_path) == nullptr);
  CHECK(movable_at(movables_of(draft), tension_path) == nullptr);  // no room is known
  const MovableSetting* tension = nullptr;
  const auto with_room = movables_of(draft, TensionRoom{0.2, 3.8});
  REQUIRE((tension = movable_at(with_room, tension_path)) != nullptr);
  CHECK(tension->lowest == Approx(-0.3));
  CHECK(tension->highest == Approx(3.3));
  draft.fiber.section = FiberSection::flat;
  CHECK_FALSE(tension_turns_lay(draft));
  CHECK(movable_at(movables_of(draft, TensionRoom{0.2, 3.8}), tension_path) == nullptr);
  draft.spool.barrel_taper_mm = 1.0;
  CHECK(start_turns_lay(draft));
  CHECK(movable_at(movables_of(draft), start_path) != nullptr);
}

TEST_CASE("tension and start are named as a cause only where they leave clearly less than any other setting") {
  PlanDraft draft = well_laid();
  draft.wind.tension_N = 0.5;
  draft.traverse.left_stop_mm = 0.8;
  const auto movables = movables_of(draft, TensionRoom{0.2, 3.8});
  const auto remedy_of = [&](const std::string& path, double share_left) {
    const MovableSetting* movable = movable_at(movables, path);
    REQUIRE(movable != nullptr);
    Remedy remedy;
    remedy.moves = {{*movable, movable->highest}};
    remedy.rest.share_left = remedy.rest.share_of_all = share_left;
    return remedy;
  };
  for (const char* path : {tension_path, start_path}) {
    std::vector<Remedy> as_good{remedy_of(path, 0.05), remedy_of("traverse.left_stop", 0.1)};
    CHECK(as_good.front().can_be_set());
    keep_singled_out(as_good);
    REQUIRE(as_good.size() == 1);
    CHECK(as_good.front().moves.front().movable.parts.front().path == "traverse.left_stop");
    std::vector<Remedy> singled_out{remedy_of(path, 0.02), remedy_of("traverse.left_stop", 0.5)};
    keep_singled_out(singled_out);
    CHECK(singled_out.size() == 2);
  }
}

TEST_CASE("a finding that a start at the other flange only takes there is not gone") {
  const SoughtFinding left{FindingKind::flange_gap, Side::left, -1e9, 3.0};
  const SoughtFinding right = mirrored(left, 12.0);
  CHECK(right.side == Side::right);
  CHECK(right.from_mm == 9.0);
  CHECK(right.to_mm > 1e8);

  PlanDraft draft = well_laid();
  draft.wind.tension_N = 0.5;
  draft.traverse.left_stop_mm = 0.8;
  const auto movables = movables_of(draft, TensionRoom{0.2, 3.8});
  Finding there;
  there.kind = FindingKind::flange_gap;
  there.side = Side::right;
  there.x_mm = {11.0, 12.0};
  there.size_d = 2.0;
  there.occurrences = 3;
  Trial trial;
  trial.findings = {there};
  const auto gravity_after = [&](const char* path) {
    const std::vector<Move> moves{{*movable_at(movables, path), 1.0}};
    return mean_after(moves, checked(draft), left, {trial, trial}, 0, 2)->of_sought.gravity;
  };
  // Three places of 2 d each: 3 x 2^2.
  CHECK(gravity_after(start_path) == Approx(12.0));
  CHECK(gravity_after(tension_path) == 0.0);
}
