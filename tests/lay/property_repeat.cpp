// The same plan and seed give the same bits, however often and on however many threads.
#include <thread>
#include <vector>

#include <catch2/catch.hpp>

#include "random_plans.h"

using namespace laywright;

namespace {

PlanDraft scattering() {
  PlanDraft draft = random_plans::draft(3, {true, true, true, 60.0});
  draft.traverse.reversal.stop_scatter_mm = 0.02 * draft.spool.inside_width_mm;
  draft.traverse.pitch_scatter = 0.02;
  draft.traverse.guide_play_mm = 0.1 * draft.fiber.diameter_mm;
  return draft;
}

}  // namespace

TEST_CASE("the same plan and seed give the same build") {
  const Plan plan = random_plans::plan_of(scattering());
  CHECK(random_plans::laid(plan, 5).hash() == random_plans::laid(plan, 5).hash());
  // A plan made anew from the same numbers, not the same object.
  CHECK(random_plans::laid(random_plans::plan_of(scattering()), 5).hash() == random_plans::laid(plan, 5).hash());
}

TEST_CASE("each kind of scatter makes two seeds differ, and without scatter they agree") {
  PlanDraft draft = random_plans::draft(3, {false, true, true, 60.0});
  const auto differ = [](const PlanDraft& wanted) {
    const Plan plan = random_plans::plan_of(wanted);
    return random_plans::laid(plan, 1).hash() != random_plans::laid(plan, 2).hash();
  };
  CHECK_FALSE(differ(draft));
  SECTION("stops") { draft.traverse.reversal.stop_scatter_mm = 0.02 * draft.spool.inside_width_mm; }
  SECTION("pitch") { draft.traverse.pitch_scatter = 0.02; }
  SECTION("play") { draft.traverse.guide_play_mm = 0.1 * draft.fiber.diameter_mm; }
  CHECK(differ(draft));
}

TEST_CASE("the hash tells builds apart that differ in one node") {
  const Plan plan = random_plans::plan_of(scattering());
  const Build build = random_plans::laid(plan);
  Build shorter = build;
  shorter.nodes.truncate(build.nodes.size() - 1);
  CHECK(shorter.hash() != build.hash());
}

TEST_CASE("two threads lay what one lays") {
  std::vector<Plan> plans;
  for (std::uint64_t seed = 11; seed < 19; ++seed) {
    plans.push_back(random_plans::plan_of(random_plans::draft(seed, {true, true, true, 50.0})));
  }
  std::vector<std::uint64_t> alone, together(plans.size());
  for (const Plan& plan : plans) alone.push_back(random_plans::laid(plan).hash());
  const auto lay_every_second = [&](std::size_t first) {
    for (std::size_t i = first; i < plans.size(); i += 2) together[i] = random_plans::laid(plans[i]).hash();
  };
  std::thread even(lay_every_second, 0U);
  std::thread odd(lay_every_second, 1U);
  even.join();
  odd.join();
  CHECK(together == alone);
}

TEST_CASE("laying stops when it is told to") {
  const Plan plan = random_plans::plan_of(random_plans::draft(3));
  SECTION("before it begins") {
    Progress progress;
    progress.cancel();
    const Result<Build> result = lay(plan, {}, progress);
    REQUIRE_FALSE(result.ok());
    REQUIRE(result.issues().size() == 1);
    CHECK(result.issues().front().what == stopped_text);
    CHECK(result.issues().front().severity == Severity::error);
    CHECK(progress.share() < 0.1);
  }
  SECTION("from another thread, well before the end") {
    PlanDraft draft = random_plans::draft(3);
    draft.wind = {};
    draft.wind.turns = 100'000.0;
    draft.spool.flange_diameter_mm = 5000.0;
    const Plan long_plan = random_plans::plan_of(draft);
    Progress progress;
    std::thread stopper([&] {
      while (progress.share() <= 0.0) std::this_thread::yield();
      progress.cancel();
    });
    const Result<Build> result = lay(long_plan, {}, progress);
    stopper.join();
    CHECK_FALSE(result.ok());
    CHECK(progress.share() < 0.5);
  }
  SECTION("not told, it reports all done") {
    Progress progress;
    REQUIRE(lay(plan, {}, progress).ok());
    CHECK(progress.share() == 1.0);
  }
}
