// Showing a wind to others.
#include "bench_for_tests.h"

#include <numbers>

#include "scene/camera.h"
#include "session/showing.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

struct ShowingLaid {
  TemporaryFolder folder;
  Workbench bench;

  ShowingLaid() : bench(options_in(folder)) {
    REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
    wait_for_build(bench);
  }
  [[nodiscard]] const Wound& wound() const { return *bench.wound(); }
};

Showing at(double seconds) { return {seconds, false, false}; }

}  // namespace

TEST_CASE("a round: it fills in half a minute at most, turns, and begins where it began") {
  CHECK(Showing::fill_s >= 20.0);
  CHECK(Showing::fill_s <= 30.0);
  CHECK(share_filled(at(0.0)) == 0.0);
  CHECK(share_filled(at(0.5 * Showing::fill_s)) == Approx(0.5));
  CHECK(share_filled(at(Showing::fill_s)) == 1.0);
  CHECK(share_filled(at(Showing::round_s - 0.1)) == 1.0);
  double before = 0.0;
  for (double s = 0.1; s <= Showing::fill_s; s += 0.1) {
    CHECK(share_filled(at(s)) > before);
    before = share_filled(at(s));
  }
  CHECK(shown_on(at(Showing::round_s - 1.0), 1.5).seconds == Approx(0.5));
  CHECK(shown_on({7.0, true, false}, 1.5).seconds == 7.0);
  CHECK(veil(at(0.0)) == 1.0);
  CHECK(veil(at(10.0)) == 0.0);
  CHECK(veil(at(Showing::round_s - 1e-6)) == Approx(1.0).margin(1e-6));
}

TEST_CASE("its figures end with those of the build, and never go back") {
  ShowingLaid laid;
  const Wound& wound = laid.wound();
  ShowFigures before;
  for (double s = 0.0; s <= Showing::fill_s; s += 0.5) {
    const ShowFigures now = figures_of_showing(at(s), wound);
    CHECK(now.length_mm >= before.length_mm);
    CHECK(now.turns >= before.turns);
    CHECK(now.diameter_mm >= before.diameter_mm);
    CHECK(*now.time_s == Approx(now.length_mm / 1000.0));  // 60 m/min
    before = now;
  }
  CHECK(figures_of_showing(at(0.0), wound).diameter_mm == 100.0);  // the bare barrel
  CHECK(before.length_mm == wound.build().length_mm);
  CHECK(before.turns == Approx(100.0));
  // With the last layer, whole or not.
  CHECK(before.diameter_mm == Approx(wound.measurements().layers.back().outer_diameter_mm[1]).margin(0.05));
}

TEST_CASE("without a line speed no time is made up") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  std::string plan = small_plan;
  plan.erase(plan.find("line_speed"));
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", plan))));
  wait_for_build(bench);
  CHECK_FALSE(figures_of_showing(at(5.0), *bench.wound()).time_s);
}

TEST_CASE("from every side the spool fits between the words") {
  ShowingLaid laid;
  const Plan& plan = laid.wound().plan();
  const ShowRoom room{0.12, 0.21};
  View view;
  for (const auto& [width, height] : {std::pair(1280, 800), std::pair(800, 600), std::pair(600, 900)}) {
    view.width_px = width;
    view.height_px = height;
    for (double s = 0.0; s < Showing::round_s; s += 1.5) {
      const View shown = view_of_showing(at(s), laid.wound(), view, room);
      CHECK(shown.width_px == width);
      for (int i = 0; i < 48; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / 48.0;
        for (const double x : {0.0, plan.spool().inside_width_mm}) {
          const auto px = in_picture(shown, in_space(x, 0.5 * plan.spool().flange_diameter_mm, angle));
          REQUIRE(px);
          CHECK(px->x > 0.0);
          CHECK(px->x < width);
          CHECK(px->y > 0.98 * room.above * height);
          CHECK(px->y < (1.0 - 0.98 * room.below) * height);
        }
      }
    }
  }
}

TEST_CASE("what is shown is clean, and the plan's own view stays") {
  ShowingLaid laid;
  CHECK_FALSE(laid.bench.apply(cmd::pause_show()));
  REQUIRE(laid.bench.apply(cmd::toggle_wedge()));
  const View own = laid.bench.active()->stage.view;
  REQUIRE(laid.bench.apply(cmd::show()));
  auto now = Workbench::Clock::now() + std::chrono::hours(1);
  laid.bench.poll(now);
  for (int i = 0; i < 50; ++i) CHECK(laid.bench.poll(now += std::chrono::milliseconds(100)));
  CHECK(laid.bench.showing()->seconds == Approx(5.0));
  CHECK(*laid.bench.seconds_to_next_poll() < 0.05);
  const View shown = view_of_showing(*laid.bench.showing(), laid.wound(), own, {});
  CHECK_FALSE(shown.findings);
  CHECK_FALSE(shown.dimensions);
  CHECK_FALSE(shown.wedge);
  CHECK(shown.until_turn);
  REQUIRE(laid.bench.apply(cmd::pause_show()));
  laid.bench.poll(now += std::chrono::milliseconds(100));
  CHECK(laid.bench.showing()->seconds == Approx(5.0));
  REQUIRE(laid.bench.apply(cmd::pause_show()));
  laid.bench.poll(now += std::chrono::minutes(5));  // held up: it does not leap
  laid.bench.poll(now += std::chrono::minutes(5));
  CHECK(laid.bench.showing()->seconds < 6.0);
  CHECK(laid.bench.active()->stage.view == own);
  REQUIRE(laid.bench.apply(cmd::leave_show()));
  CHECK_FALSE(laid.bench.showing());
  REQUIRE(laid.bench.apply(cmd::show()));
  CHECK(laid.bench.showing()->seconds == 0.0);
  laid.bench.apply(cmd::close());
  laid.bench.poll(now);
  CHECK_FALSE(laid.bench.showing());
}
