// The scrubber against closed forms: a helix on a bare barrel, a guide that goes back and forth.
#include "bench_for_tests.h"

#include <cmath>
#include <numbers>

using namespace laywright;
using namespace laywright::testing;

namespace {

constexpr double pi = std::numbers::pi;

// One layer of fiber that never slips, free length 0: turn t lies where the guide was. Each turn is as long as the
// helix of its pitch on the circle of centre lines.
struct Helix {
  TemporaryFolder folder;
  Workbench bench;

  Helix() : bench(options_in(folder)) {
    std::string text = small_plan;
    const auto put = [&](const std::string& from, const std::string& to) {
      text.replace(text.find(from), from.size(), to);
    };
    put("friction = 0.5", "friction = \"held\"");
    put("free_length = \"100 mm\"", "free_length = \"0 mm\"");
    put("turns = 100", "turns = 10");
    REQUIRE(bench.apply(cmd::open(folder.file("helix.lay.toml", text))));
    wait_for_build(bench);
  }
  [[nodiscard]] const Wound& wound() const { return *bench.wound(); }
  [[nodiscard]] Moment now() const { return moment_of(bench.active()->stage.playback, wound()); }
};

const double turn_length = std::hypot(pi * 101.0, 1.02);

}  // namespace

TEST_CASE("length, turn and time of a helix agree with its closed form") {
  Helix helix;
  CHECK(helix.now().at_end);
  CHECK(helix.now().turn == 10.0);
  CHECK(helix.now().length_mm == Approx(10.0 * turn_length).epsilon(1e-7));
  for (const double turn : {0.0, 0.25, 1.0, 3.7, 9.999}) {
    helix.bench.apply(cmd::scrub_turn(turn));
    INFO(turn);
    const Moment moment = helix.now();
    CHECK(moment.turn == Approx(turn).margin(1e-9));
    CHECK(moment.length_mm == Approx(turn * turn_length).epsilon(1e-6).margin(1e-9));
    CHECK(moment.time_s == Approx(turn * turn_length / 1000.0).epsilon(1e-6).margin(1e-12));  // 60 m/min
    CHECK(moment.layer == 1);
    CHECK(moment.angle_rad == Approx(2 * pi * (turn - std::floor(turn))).margin(1e-6));
    CHECK(moment.guide_x_mm == Approx(0.5 + 1.02 * turn).epsilon(1e-9));
    CHECK(moment.lay_x_mm == Approx(0.5 + 1.02 * turn).margin(1e-4));
    CHECK(moment.lay_r_mm == Approx(50.5).margin(1e-4));
  }
  helix.bench.apply(cmd::scrub_time(2.0 * turn_length / 1000.0));
  CHECK(helix.now().turn == Approx(2.0).epsilon(1e-6));
  helix.bench.apply(cmd::scrub_length(3.0 * turn_length));
  CHECK(helix.now().turn == Approx(3.0).epsilon(1e-6));
  CHECK(helix.bench.active()->stage.view.until_turn);
}

TEST_CASE("the scrubber stays within the wind") {
  Helix helix;
  helix.bench.apply(cmd::scrub_length(-5.0));
  CHECK(helix.now().length_mm == 0.0);
  helix.bench.apply(cmd::step_turns(-1.0));
  CHECK(helix.now().turn == 0.0);
  helix.bench.apply(cmd::scrub_turn(1e300));
  CHECK(helix.now().at_end);
  CHECK_FALSE(helix.bench.active()->stage.view.until_turn);
  helix.bench.apply(cmd::scrub_turn(4.25));
  helix.bench.apply(cmd::scrub_turn(std::nan("")));
  CHECK(helix.now().turn == Approx(4.25));
  helix.bench.apply(cmd::step_turns(1.0));
  CHECK(helix.now().turn == Approx(5.25).epsilon(1e-12));
  helix.bench.apply(cmd::step_turns(10.0));
  CHECK(helix.now().at_end);
}

TEST_CASE("play moves by line speed times rate, and ends at the end") {
  Helix helix;
  Playback playback = started(with_rate(at_length(Playback{}, helix.wound(), 100.0), 2.0));
  playback = played(playback, helix.wound(), 0.25);
  CHECK(playback.wanted_mm == Approx(100.0 + 0.25 * 2.0 * 1000.0).epsilon(1e-12));
  CHECK(playback.playing);
  playback = played(playback, helix.wound(), 1e6);
  CHECK(playback.wanted_mm == Playback::at_end);
  CHECK_FALSE(playback.playing);
  // From the end it begins anew.
  CHECK(started(playback).wanted_mm == 0.0);
  // Without a rate, the whole wind takes half a minute.
  const Playback whole = played(started(Playback{}), helix.wound(), whole_wind_s / 2.0);
  CHECK(whole.wanted_mm == Approx(0.5 * helix.wound().build().length_mm).epsilon(1e-9));
  CHECK(with_rate(Playback{}, 1e99).rate == fastest_rate);
  CHECK(with_rate(Playback{}, -1.0).rate == slowest_rate);
}

TEST_CASE("polling plays") {
  Helix helix;
  helix.bench.apply(cmd::to_start());
  helix.bench.apply(cmd::set_rate(0.1));  // 100 mm a second
  helix.bench.apply(cmd::play_pause());
  auto now = Workbench::Clock::now() + std::chrono::hours(1);
  helix.bench.poll(now);
  const double start = helix.now().length_mm;
  for (int i = 0; i < 10; ++i) CHECK(helix.bench.poll(now += std::chrono::milliseconds(100)));
  CHECK(helix.now().length_mm - start == Approx(100.0).epsilon(1e-6));
  CHECK(*helix.bench.seconds_to_next_poll() < 0.02);
  helix.bench.apply(cmd::play_pause());
  helix.bench.poll(now += std::chrono::milliseconds(100));
  CHECK(helix.now().length_mm - start == Approx(100.0).epsilon(1e-6));
}

TEST_CASE("played fast, the lay point stands at one place around the spool, slow or paused it is where it is") {
  Helix helix;
  const auto until = [&] { return helix.bench.active()->stage.view.until_turn; };
  helix.bench.apply(cmd::scrub_turn(2.6));
  CHECK(until() == Approx(2.6));
  helix.bench.apply(cmd::set_rate(0.5));  // 500 mm a second: 1.6 turns
  helix.bench.apply(cmd::play_pause());
  CHECK(until() == Approx(2.6));
  helix.bench.apply(cmd::set_rate(2.0));  // 6.3 turns
  CHECK(until() == Approx(2.125));
  helix.bench.apply(cmd::play_pause());
  CHECK(until() == Approx(2.6));
}

TEST_CASE("the guide goes back and forth as a triangle") {
  // Stroke 19.5 mm at 1.02 mm a turn, instant reversal: x = 0.5 + |triangle|.
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
  wait_for_build(bench);
  for (double turn = 0.0; turn <= 100.0; turn += 3.3) {
    const double travel = std::fmod(1.02 * turn, 39.0);
    const double expected = 0.5 + (travel <= 19.5 ? travel : 39.0 - travel);
    INFO(turn);
    CHECK(bench.wound()->source.guide().x_at(turn) == Approx(expected).margin(1e-6));
  }
  CHECK(bench.wound()->source.guide().x_at(-1.0) == 0.5);
  CHECK(bench.wound()->source.guide().x_at(1e9) == bench.wound()->source.guide().x_at(100.0));
}

TEST_CASE("steps go from finding to finding, each once, and back") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
  wait_for_build(bench);
  std::set<double> begins;
  for (const Finding& finding : bench.wound()->measurements().findings) begins.insert(finding.turn);
  REQUIRE(begins.size() >= 2);
  bench.apply(cmd::to_start());
  begins.erase(0.0);
  for (const double turn : begins) {
    REQUIRE(bench.apply(cmd::step_finding(1)));
    CHECK(moment_of(bench.active()->stage.playback, *bench.wound()).turn == Approx(turn).margin(1e-6));
    CHECK(bench.active()->stage.view.chosen_finding);
  }
  CHECK_FALSE(bench.apply(cmd::step_finding(1)));
  bench.apply(cmd::step_finding(-1));
  CHECK(moment_of(bench.active()->stage.playback, *bench.wound()).turn ==
        Approx(*std::next(begins.rbegin())).margin(1e-6));
}

TEST_CASE("the scrubber's place stays when the plan changes") {
  Helix helix;
  helix.bench.apply(cmd::scrub_length(1000.0));
  helix.bench.apply(cmd::type_field("traverse.pitch", "1.5 mm"));
  wait_for_build(helix.bench);
  CHECK(helix.now().length_mm == Approx(1000.0));
  CHECK(helix.now().turn == Approx(1000.0 / std::hypot(pi * 101.0, 1.5)).epsilon(1e-6));
}
