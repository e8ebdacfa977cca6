// Laying in the background: the same build as laid at once, the newest plan wins, and nobody waits.
#include "bench_for_tests.h"

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <numeric>
#include <optional>

#include "jobs/no_more_threads.h"
#include "lay/lay.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

Plan sample_plan(const std::string& name) { return load_plan(sample(name)).value(); }

std::uint64_t hash_at_once(const PlanDraft& draft, std::uint64_t seed = 1, double fidelity = 1.0) {
  Progress progress;
  LaySettings settings;
  settings.seed = seed;
  settings.fidelity = fidelity;
  return lay(check(draft).value(), settings, progress).value().hash();
}

// As long as it takes: what never comes ends at the test's own limit (tests/CMakeLists.txt).
void await(const std::function<bool()>& so) {
  while (!so()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

// 300 km on a spool that holds them, with so little friction that nodes slide far: many minutes' work for any machine of
// today.
PlanDraft endless_plan() {
  PlanDraft draft = sample_plan("long").draft();
  draft.spool.flange_diameter_mm = 3'000.0;
  draft.wind.length_mm = 3e8;
  draft.fiber.friction = 0.05;
  return draft;
}

}  // namespace

TEST_CASE("the full build is that of lay(), for every seed") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  std::string text = small_plan;
  text.insert(text.find("free_length"), "pitch_scatter = \"3 %\"\n");
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", text))));
  wait_for_build(bench);
  const PlanDraft draft = document(bench).state().draft;
  CHECK(bench.wound()->build().hash() == hash_at_once(draft));
  bench.apply(cmd::next_seed());
  REQUIRE(wait_until(bench, [&] { return is_laid(bench) && bench.wound()->build().seed == 2; }));
  CHECK(bench.wound()->build().hash() == hash_at_once(draft, 2));
  CHECK(hash_at_once(draft, 2) != hash_at_once(draft, 1));
}

TEST_CASE("a first look comes before the full build, and is the coarse build that lay() makes") {
  Errands errands;
  std::atomic<int> woken{0};
  Laying laying([&] { ++woken; }, errands.queue());
  const Plan plan = sample_plan("even");
  const std::uint64_t revision = laying.lay(plan, 1);
  WoundPtr first, last;
  await([&] {
    if (WoundPtr fresh = laying.take()) {
      if (!first) first = fresh;
      last = fresh;
    }
    return last && last->pass.full();
  });
  CHECK_FALSE(first->pass.full());
  CHECK(first->pass.fidelity >= coarsest_fidelity);
  CHECK(first->revision == revision);
  CHECK(first->build().hash() == hash_at_once(first->plan().draft(), 1, first->pass.fidelity));
  CHECK(last->build().hash() == hash_at_once(plan.draft()));
  CHECK(woken >= 2);
  await([&] { return !laying.status().busy; });
  CHECK_FALSE(laying.take());
}

TEST_CASE("the newest plan wins, however fast they come") {
  Errands errands;
  Laying laying([] {}, errands.queue());
  PlanDraft draft = sample_plan("even").draft();
  std::uint64_t newest = 0;
  WoundPtr last;
  for (int i = 0; i < 60; ++i) {
    draft.traverse.pitch_mm = 0.25 + 0.0002 * i;
    newest = laying.lay(check(draft).value(), 1);
    std::this_thread::sleep_for(std::chrono::milliseconds(i % 7));
    if (WoundPtr fresh = laying.take()) {
      // What arrives is never older than what came before.
      CHECK((!last || fresh->revision >= last->revision));
      last = fresh;
    }
  }
  await([&] {
    if (WoundPtr fresh = laying.take()) last = fresh;
    return last && last->revision == newest && last->pass.full();
  });
  CHECK(last->plan().traverse().pitch_mm == draft.traverse.pitch_mm);
  CHECK(last->build().hash() == hash_at_once(draft));
}

TEST_CASE("plans that come faster than they can be laid do not keep the picture still") {
  Errands errands;
  Laying laying([] {}, errands.queue());
  PlanDraft draft = sample_plan("even").draft();
  std::set<std::uint64_t> shown;
  // Each comes long before the first look at the one before can be ready. If nothing were shown this would not end.
  for (int i = 0; shown.size() < 3; ++i) {
    draft.traverse.pitch_mm = 0.25 + 1e-5 * (i % 1000);
    laying.lay(check(draft).value(), 1);
    std::this_thread::sleep_for(std::chrono::milliseconds(8));
    if (const WoundPtr fresh = laying.take()) shown.insert(fresh->revision);
  }
  CHECK(shown.size() == 3);
}

TEST_CASE("laying is stopped: nothing more comes, and it can begin again") {
  Errands errands;
  Laying laying([] {}, errands.queue());
  laying.lay(sample_plan("long"), 1);
  await([&] { return laying.take() != nullptr; });  // the first look
  laying.stop();
  CHECK(laying.status().stopped);
  CHECK_FALSE(laying.status().busy);
  (void)laying.take();
  std::this_thread::sleep_for(std::chrono::milliseconds(300));
  CHECK_FALSE(laying.take());
  const std::uint64_t again = laying.lay(sample_plan("even"), 1);
  CHECK_FALSE(laying.status().stopped);
  WoundPtr last;
  await([&] {
    if (WoundPtr fresh = laying.take()) last = fresh;
    return last && last->pass.full();
  });
  CHECK(last->revision == again);
}

TEST_CASE("progress grows, and the time left is told") {
  Errands errands;
  Laying laying([] {}, errands.queue());
  laying.lay(sample_plan("even"), 1);
  double share = 0.0;
  Pass pass;
  await([&] {
    const LayingStatus status = laying.status();
    if (!status.busy) return true;
    if (status.pass.fidelity != pass.fidelity) share = 0.0;
    pass = status.pass;
    CHECK(status.share >= share);
    CHECK(status.share <= 1.0);
    share = status.share;
    return false;
  });
  // A wind that is over before there is anything to go by tells none; of one that does not end it is told for sure.
  laying.lay(check(endless_plan()).value(), 1);
  // At the end of a pass none is left of it.
  await([&] {
    const std::optional<double> left = laying.status().seconds_left;
    return left && *left > 0.0;
  });
}

TEST_CASE("a long wind's first look is its beginning, then the whole, then in full") {
  const Plan plan = sample_plan("long");
  const std::vector<Pass> passes = passes_for(plan, LayCost{});
  REQUIRE(passes.size() == 3);
  CHECK_FALSE(passes[0].whole());
  CHECK(passes[1].whole());
  CHECK_FALSE(passes[1].full());
  CHECK(passes[2].full());
  CHECK(plan_for(plan, passes[0]).wind().length_mm == *plan.wind().length_mm * passes[0].share);
  // A small plan is laid in full at once.
  PlanDraft small = sample_plan("even").draft();
  small.wind.length_mm = 10'000.0;
  const std::vector<Pass> one = passes_for(check(small).value(), LayCost{});
  REQUIRE(one.size() == 1);
  CHECK(one[0].full());
  // By diameter, too.
  PlanDraft by_diameter = plan.draft();
  by_diameter.wind.length_mm.reset();
  by_diameter.wind.diameter_mm = 200.0;
  const Plan cut = plan_for(check(by_diameter).value(), Pass{0.2, 0.1});
  CHECK(cut.wind().turns);
  CHECK_FALSE(cut.wind().diameter_mm);
}

TEST_CASE("the first look adapts to what laying costs on this machine") {
  const Plan plan = sample_plan("even");
  const auto nodes = [&](double ns) {
    const Pass pass = passes_for(plan, LayCost{ns}).front();
    return pass.fidelity * pass.share;
  };
  CHECK(nodes(110.0) == Approx(2.0 * nodes(220.0)));
  // The whole wind is worth a little longer wait; a first look is never coarser than this.
  CHECK(passes_for(plan, LayCost{420.0}).front().fidelity == coarsest_fidelity);
  CHECK(passes_for(plan, LayCost{420.0}).front().whole());
  LayCost cost;
  for (int i = 0; i < 40; ++i) cost.learn(0.1, 1e6);  // 100 ns a node
  CHECK(cost.ns_per_node == Approx(100.0).epsilon(1e-6));
  cost.learn(1.0, 10.0);  // too few to tell anything
  CHECK(cost.ns_per_node == Approx(100.0).epsilon(1e-6));
}

TEST_CASE("a workbench that is laying closes without laying the rest") {
  TemporaryFolder folder;
  PlanDraft draft = endless_plan();
  std::atomic<int> woken{0};
  Workbench::Options options = options_in(folder);
  options.wake = [&] { ++woken; };
  auto bench = std::make_unique<Workbench>(options);
  REQUIRE(bench->apply(cmd::open(folder.file("a.lay.toml", write_plan(draft)))));
  // The first look, of its beginning, is over, and the whole has begun.
  REQUIRE(wait_until(*bench, [&] {
    const LayingStatus status = document(*bench).laying();
    return bench->wound() && status.busy && status.pass.whole() && status.share > 0.0;
  }));
  const int before = woken;
  bench.reset();
  // The machine's side of the first look may still come; the two builds that are left do not.
  CHECK(woken - before <= 1);
}

// Others' threads call it, and stay in it until it is opened.
class Gate {
 public:
  void pass() {
    std::unique_lock lock(mutex_);
    opened_.wait(lock, [&] { return open_; });
  }
  void open() {
    const std::lock_guard lock(mutex_);
    open_ = true;
    opened_.notify_all();
  }

 private:
  std::mutex mutex_;
  std::condition_variable opened_;
  bool open_ = false;
};

TEST_CASE("the window's thread never waits for the thread that lays") {
  TemporaryFolder folder;
  Gate gate;
  Workbench::Options options = options_in(folder);
  options.wake = [&] { gate.pass(); };
  Workbench bench(options);
  bench.apply(cmd::open(folder.file("long.lay.toml", contents(sample("long")))));
  // The laying thread has a first look to show, and stands still from here on, until it has told of it.
  await([&] {
    bench.poll();
    return bench.wound() != nullptr;
  });
  const WoundPtr look = bench.wound();
  // Each of these would not come back if it waited for that thread.
  for (int i = 0; i < 400; ++i) {
    if (i % 20 == 0) CHECK(bench.apply(cmd::set_field("traverse.pitch", 0.26 + 1e-5 * i, 1)));
    bench.poll();
    CHECK(document(bench).laying().busy);
    CHECK(bench.wound() == look);
  }
  bench.apply(cmd::stop_laying());
  CHECK(document(bench).laying().stopped);
  bench.apply(cmd::type_field("wind.length", "1 m"));
  gate.open();
  wait_for_build(bench);
  CHECK(bench.wound()->plan().wind().length_mm == 1000.0);
}

TEST_CASE("two workbenches in one process do not know of each other") {
  TemporaryFolder one_folder, other_folder;
  Workbench one(options_in(one_folder)), other(options_in(other_folder));
  one.apply(cmd::open(one_folder.file("a.lay.toml", small_plan)));
  other.apply(cmd::open(other_folder.file("a.lay.toml", small_plan)));
  one.apply(cmd::type_field("traverse.pitch", "1.3 mm"));
  one.apply(cmd::toggle_units());
  wait_for_build(one);
  wait_for_build(other);
  CHECK(one.wound()->plan().traverse().pitch_mm == 1.3);
  CHECK(other.wound()->plan().traverse().pitch_mm == 1.02);
  CHECK(other.active()->stage.view.units == Units::metric);
  CHECK_FALSE(document(other).dirty());
  CHECK(one.wound()->build().hash() == hash_at_once(document(one).state().draft));
  CHECK(other.wound()->build().hash() == hash_at_once(document(other).state().draft));
}

TEST_CASE("a build with few stations is called a quick look until the full one is laid") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  REQUIRE(bench.apply(cmd::open(LAYWRIGHT_SOURCE_DIR "/samples/long.lay.toml")));
  CHECK(bench.quick_look().empty());
  REQUIRE(wait_until(bench, [&] { return bench.wound() != nullptr; }));
  CHECK_FALSE(bench.wound()->pass.full());
  CHECK(bench.quick_look() == "Quick look: heights are rough");
  // Laid turns of a soft fiber give way in the full build alone.
  REQUIRE(bench.apply(cmd::type_field("fiber.core_diameter", "0.25 mm")));
  REQUIRE(bench.apply(cmd::type_field("fiber.modulus", "400 MPa")));
  REQUIRE(wait_until(bench, [&] { return bench.wound()->plan().fiber().modulus_MPa == 400.0; }));
  CHECK_FALSE(bench.wound()->pass.full());
  CHECK(bench.quick_look() == "Quick look: heights are rough, and turns have not given way yet");
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
  wait_for_build(bench);
  CHECK(bench.quick_look().empty());
}

TEST_CASE("an unsound edit keeps the last picture and says so, mended, laying goes on") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
  wait_for_build(bench);
  const WoundPtr before = bench.wound();
  CHECK(bench.hint().empty());
  bench.apply(cmd::type_field("spool.barrel_diameter", "300 mm"));
  CHECK(bench.wound() == before);
  CHECK_FALSE(document(bench).wound_is_current());
  CHECK(bench.hint().find("last plan that was sound") != std::string::npos);
  bench.apply(cmd::type_field("spool.barrel_diameter", "110 mm"));
  wait_for_build(bench);
  CHECK(bench.wound()->plan().spool().barrel_diameter_mm == 110.0);
}

TEST_CASE("where no thread can be started, laying says so, and the next try lays") {
  Errands errands;
  Laying laying([] {}, errands.queue());
  const Plan plan = sample_plan("even");
  {
    const NoMoreThreads none;
    laying.lay(plan, 1);
  }
  CHECK_FALSE(laying.status().busy);
  CHECK(laying.status().trouble ==
        "The system starts no further thread for this wind: close other programs, and try again.");
  CHECK_FALSE(laying.take());
  laying.lay(plan, 1);
  CHECK(laying.status().trouble.empty());
  WoundPtr last;
  await([&] {
    if (WoundPtr fresh = laying.take()) last = fresh;
    return last && last->pass.full();
  });
  CHECK(last->build().hash() == hash_at_once(plan.draft()));
}

TEST_CASE("a build that outlives its workbench stays whole") {
  WoundPtr kept;
  {
    TemporaryFolder folder;
    Workbench bench(options_in(folder));
    bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
    wait_for_build(bench);
    kept = bench.wound();
  }
  CHECK(kept->build().hash() == hash_at_once(kept->plan().draft()));
}
