// An order worked out: what is wound, and what comes of it.
#include "order/batch.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <mutex>
#include <set>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "advise/capacity.h"
#include "order/reel_shop.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

using namespace laywright;
using laywright::testing::reel;
using Shop = laywright::testing::ReelShop;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

const char* const besides = "[delivery]\nleader = \"4 m\"\ntail = \"3 m\"\nsample = \"1 m\"\nsamples = 2\n";

}  // namespace

TEST_CASE("a spool takes what the model fits below the rim clearance, less leader, tail and samples") {
  Shop shop;
  const Order order = shop.order(std::string("[[piece]]\nlength = \"100 m\"\n") + besides);
  const std::vector<SpoolKind> kinds = shop.kinds(order);
  const double fits = capacity(kinds[0].plan, shop.settings, shop.progress).value().first_touch_mm;
  CHECK(fits > 300e3);
  CHECK(kinds[0].fits_mm == fits);
  CHECK(kinds[0].room_mm <= fits - 9e3);
  CHECK(kinds[0].room_mm > fits - 10e3);
  CHECK(std::fmod(kinds[0].room_mm, 1e3) == 0.0);
  const Order limited = shop.order("[[piece]]\nlength = \"100 m\"\n[[spool]]\nmost = \"150.5 m\"\n");
  CHECK(shop.kinds(limited)[0].room_mm == 150.5e3);
}

TEST_CASE("what is wound is what is delivered, with leader, tail and samples on every spool") {
  Shop shop;
  const Batch batch = shop.wound(
      std::string("[[piece]]\nlength = \"150 m\"\ncount = 2\n[[piece]]\nlength = \"80 m\"\ncount = 3\n") + besides);
  const BatchTotals totals = totals_of(batch);
  CHECK(totals.net_mm == 540e3);
  double gross = 0.0, mass = 0.0, time = 0.0;
  std::vector<double> delivered(5, 0.0);
  for (const BatchSpool& spool : batch.spools) {
    CHECK(spool.gross_mm == spool.net_mm + 4e3 + 3e3 + 2e3);
    CHECK(spool.net_mm <= batch.kinds[spool.kind].room_mm);
    CHECK(spool.splices == 0);
    gross += spool.gross_mm;
    mass += *batch.winds[spool.wind].fiber_mass_kg;
    time += *batch.winds[spool.wind].time_s;
    for (const Taken& taken : spool.taken) delivered[taken.piece] += taken.length_mm;
  }
  CHECK(delivered == std::vector<double>{150e3, 150e3, 80e3, 80e3, 80e3});
  const double spools = static_cast<double>(batch.spools.size());
  CHECK(totals.gross_mm == gross);
  CHECK(totals.gross_mm == totals.net_mm + totals.leader_mm + totals.tail_mm + totals.samples_mm);
  CHECK(totals.leader_mm == spools * 4e3);
  CHECK(totals.samples_mm == spools * 2e3);
  CHECK(*totals.fiber_mass_kg == Approx(mass));
  CHECK(*totals.time_s == Approx(time));
  // 1 kg/km; 60 m/min.
  CHECK(*totals.fiber_mass_kg == Approx(totals.gross_mm / 1e6));
  CHECK(*totals.time_s == Approx(totals.gross_mm / 1e3));
}

TEST_CASE("spools that are wound alike are laid once") {
  Shop shop;
  const Order order = shop.order("[[piece]]\nlength = \"200 m\"\ncount = 3\n[[piece]]\nlength = \"190 m\"\n");
  Batch batch = batch_of(order, shop.kinds(order)).value();
  REQUIRE(batch.spools.size() == 4);
  REQUIRE(batch.winds.size() == 2);
  std::mutex counting;
  std::multiset<std::size_t> laid;
  REQUIRE(wind_batch(batch, shop.settings, 2, shop.progress, [&](std::size_t wind, const LaidWind& now, Progress&) {
            const std::scoped_lock lock(counting);
            laid.insert(wind);
            CHECK(now.build->length_mm == Approx(batch.winds[wind].gross_mm));
            return Issues{};
          }).empty());
  CHECK(laid == std::multiset<std::size_t>{0, 1});
}

TEST_CASE("each figure of a spool is what laying its written plan gives") {
  Shop shop;
  const Batch batch = shop.wound(
      std::string("[[piece]]\nlength = \"150 m\"\n[[piece]]\nlength = \"333 ft\"\ncount = 3\n") + besides);
  REQUIRE(batch.spools.size() > 1);
  for (std::size_t i = 0; i < batch.spools.size(); ++i) {
    const std::string text = plan_text_of(batch, i);
    const Result<Plan> plan = plan_from_text(text, "spool.lay.toml");
    REQUIRE(plan.ok());
    CHECK(same_plan(plan.value().draft(), draft_of(batch, i)));
    CHECK(plan.value().wind().length_mm == batch.spools[i].gross_mm);
    CHECK_FALSE(plan.value().wind().turns);
    CHECK(plan.value().order().number == "7");
    CHECK(plan.value().order().spool == fmt::format("{} of {}", i + 1, batch.spools.size()));
    // The person's comments are still there.
    CHECK_THAT(text, Contains("# Our reel.") && Contains("# bare"));
    CHECK_THAT(text, StartsWith(fmt::format("# Spool {} of {} of order 7. All comments below were written for ",
                                            i + 1, batch.spools.size())));
    const Build build = lay(plan.value(), shop.settings, shop.progress).value();
    const Measurements measured = measure(plan.value(), build, shop.progress);
    const TakeupRun run = take_up(plan.value(), build, measured, shop.progress);
    const SpoolWind& wind = batch.winds[batch.spools[i].wind];
    CHECK(wind.turns == build.turns);
    CHECK(wind.outer_diameter_mm == measured.outer_diameter.greatest_mm);
    CHECK(wind.rim_clearance_mm == measured.rim_clearance_mm);
    CHECK(wind.verdict.reason == verdict_of(plan.value(), build, measured, &run).reason);
    CHECK(wind.rim_clearance_mm >= 5.0);
  }
}

TEST_CASE("the plan of a spool has the order's title, and else its own") {
  Shop shop;
  const Batch titled = shop.wound("title = \"Reels\"\n[[piece]]\nlength = \"50 m\"\n");
  CHECK(draft_of(titled, 0).title == "Reels, spool 1 of 1");
  const Batch plain = shop.wound("[[piece]]\nlength = \"50 m\"\n");
  CHECK(draft_of(plain, 0).title == "Reel");
}

TEST_CASE("what is not known of a plan is not known of its spools") {
  Shop shop;
  std::string bare = reel;
  for (const std::string line : {"linear_mass = \"1 kg/km\"\n", "line_speed = \"60 m/min\"\n"})
    bare.erase(bare.find(line), line.size());
  (void)shop.folder.file("reel.lay.toml", bare);
  const Batch batch = shop.wound("[[piece]]\nlength = \"50 m\"\n");
  CHECK_FALSE(batch.winds[0].time_s);
  CHECK_FALSE(batch.winds[0].fiber_mass_kg);
  CHECK_FALSE(totals_of(batch).time_s);
  CHECK_FALSE(totals_of(batch).fiber_mass_kg);
}

TEST_CASE("with splices a long piece goes over several spools, and each full one has its splices counted") {
  Shop shop;
  const Batch batch =
      shop.wound("[[piece]]\nlength = \"40 m\"\n[[piece]]\nlength = \"700 m\"\n[delivery]\nsplices = 1\n");
  CHECK(totals_of(batch).net_mm == 740e3);
  CHECK(batch.fewest);
  int splices = 0;
  for (const BatchSpool& spool : batch.spools) {
    CHECK(spool.splices == static_cast<int>(spool.taken.size()) - 1);
    CHECK(spool.splices <= 1);
    splices += spool.splices;
  }
  CHECK(splices == 1);
  CHECK(totals_of(batch).splices == 1);
}

TEST_CASE("what cannot be delivered is told at its line, with what to do") {
  Shop shop;
  const auto only = [&](const std::string& rest) {
    const Order order = shop.order(rest);
    const Result<Batch> batch = batch_of(order, shop.kinds(order));
    REQUIRE(batch.issues().size() == 1);
    CHECK(batch.issues().front().file == order.file);
    return batch.issues().front();
  };
  const Issue too_long = only("[[piece]]\nlength = \"5 m\"\n[[piece]]\nlength = \"2 km\"\n");
  CHECK(too_long.line == 6);
  CHECK(too_long.value == "\"2 km\"");
  CHECK_THAT(too_long.what, Contains("allow splices") && Contains("larger spool"));
  const Issue too_few = only("[[piece]]\nlength = \"200 m\"\ncount = 3\n[[spool]]\ncount = 2\n");
  CHECK(too_few.line == 4);
  CHECK_THAT(too_few.what, Contains("1 piece of 200 m in all found no spool") && Contains("at hand"));
  const Issue no_room = only("[[piece]]\nlength = \"5 m\"\n[delivery]\nleader = \"2 km\"\n");
  CHECK(no_room.line == 3);
  CHECK_THAT(no_room.what, Contains("use up"));
}

TEST_CASE("a plan of the order that cannot be used is told with its own issues") {
  Shop shop;
  (void)shop.folder.file("bad.lay.toml", "format = \"lay-plan 1\"\n");
  for (const char* plan : {"bad.lay.toml", "nowhere.lay.toml"}) {
    const Order order = shop.order(fmt::format("[[piece]]\nlength = \"1 m\"\n[[spool]]\nplan = \"{}\"\n", plan));
    const Result<std::vector<SpoolKind>> kinds = kinds_of(order, shop.entries);
    REQUIRE_FALSE(kinds.ok());
    CHECK_THAT(kinds.issues().front().file, Contains(plan));
    CHECK(kinds.issues().back().line == 7);
    CHECK(kinds.issues().back().file == order.file);
  }
}

TEST_CASE("stopped, an order ends soon") {
  Shop shop;
  const Order order = shop.order("[[piece]]\nlength = \"200 m\"\n");
  Batch batch = batch_of(order, shop.kinds(order)).value();
  shop.progress.cancel();
  int laid = 0;
  (void)wind_batch(batch, shop.settings, 1, shop.progress, [&](std::size_t, const LaidWind&, Progress&) {
    ++laid;
    return Issues{};
  });
  CHECK(laid == 0);
}
