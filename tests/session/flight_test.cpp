// Flights to findings: smooth, short, gone when they are over, and what they opened is closed again.
#include "bench_for_tests.h"

#include <cmath>

#include <glm/geometric.hpp>

#include "scene/flight.h"
#include "scene/marks.h"
#include "scene/sight.h"
#include "session/command_rows.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

using Milliseconds = std::chrono::milliseconds;

struct LaidLongDwell {
  TemporaryFolder folder;
  Workbench bench;
  Workbench::Clock::time_point now = Workbench::Clock::now() + std::chrono::hours(1);

  LaidLongDwell() : bench(options_in(folder)) {
    REQUIRE(bench.apply(cmd::open(sample("long-dwell"))));
    wait_for_build(bench);
    REQUIRE(bench.wound()->measurements().findings.size() > 4);
  }
  [[nodiscard]] const View& view() const { return bench.active()->stage.view; }
  [[nodiscard]] const Camera& camera() const { return view().camera; }
  bool after_ms(int ms) { return bench.poll(now += Milliseconds(ms)); }
  void land() {
    for (int i = 0; i < 40; ++i) after_ms(16);
    REQUIRE_FALSE(bench.active()->stage.flight);
  }
};

double way(const Camera& a, const Camera& b) {
  return glm::length(eye_of(a) - eye_of(b)) + glm::length(a.target - b.target);
}

}  // namespace

TEST_CASE("a camera flies to a finding in 0.4 s, softly at both ends, and rests there") {
  LaidLongDwell laid;
  const Camera start = laid.camera();
  REQUIRE(laid.bench.apply(cmd::fly_to_finding(1)));
  CHECK(laid.camera() == start);
  REQUIRE(laid.bench.active()->stage.flight);
  const Camera end = laid.bench.active()->stage.flight->to;
  CHECK(*laid.bench.seconds_to_next_poll() < 0.02);
  CHECK(laid.after_ms(0));
  std::vector<Camera> seen{laid.camera()};
  for (int ms = 0; ms < 400; ms += 10) {
    CHECK(laid.after_ms(10));
    seen.push_back(laid.camera());
  }
  CHECK(seen.front() == start);
  CHECK(seen.back() == end);
  double total = 0.0;
  for (std::size_t i = 0; i + 1 < seen.size(); ++i) total += way(seen[i], seen[i + 1]);
  // Eased: of the way, the first and the last tenth of the time make less than a tenth.
  const auto part = [&](std::size_t from, std::size_t to) {
    double length = 0.0;
    for (std::size_t i = from; i < to; ++i) length += way(seen[i], seen[i + 1]);
    return length / total;
  };
  CHECK(part(0, 4) < 0.09);
  CHECK(part(36, 40) < 0.09);
  for (std::size_t i = 0; i + 1 < seen.size(); ++i) CHECK(part(i, i + 1) < 0.08);
  // At rest nothing moves, and nobody asks to be polled for it.
  CHECK_FALSE(laid.bench.active()->stage.flight);
  CHECK_FALSE(laid.after_ms(16));
  CHECK(*laid.bench.seconds_to_next_poll() > 0.1);
}

TEST_CASE("the camera keeps out of the spool on its way from any finding to any other") {
  LaidLongDwell laid;
  const Spool& spool = laid.bench.wound()->plan().spool();
  const double rim = 0.5 * spool.flange_diameter_mm;
  std::vector<Camera> ends{laid.camera()};
  for (std::size_t i = 0; i < laid.bench.wound()->measurements().findings.size(); ++i) {
    REQUIRE(laid.bench.apply(cmd::fly_to_finding(i)));
    laid.land();
    ends.push_back(laid.camera());
  }
  int inside = 0, steps = 0;
  for (const Camera& from : ends) {
    for (const Camera& to : ends) {
      for (double share = 0.05; share < 1.0; share += 0.05, ++steps) {
        const Vec3 eye = eye_of(camera_between(from, to, share));
        const bool in_width = eye.x > 0.0 && eye.x < spool.inside_width_mm;
        inside += in_width && radius_of(eye) < 0.5 * spool.barrel_diameter_mm ? 1 : 0;
      }
    }
  }
  INFO("rim " << rim << ", " << steps << " steps");
  CHECK(inside == 0);
}

TEST_CASE("without motion, or without time, a flight is a jump") {
  LaidLongDwell laid;
  REQUIRE(laid.bench.apply(row_of_keys("J")->command));
  CHECK_FALSE(laid.bench.settings().motion);
  REQUIRE(laid.bench.apply(cmd::fly_to_finding(0)));
  CHECK_FALSE(laid.bench.active()->stage.flight);
  const Mark mark = mark_of(laid.bench.wound()->source, laid.view(), 0);
  CHECK(in_the_way(laid.bench.wound()->source, laid.view(), mark.place).nothing());

  TemporaryFolder folder;
  Workbench::Options options = options_in(folder);
  options.flight_s = 0.0;
  Workbench bench(options);
  REQUIRE(bench.apply(cmd::open(sample("long-dwell"))));
  wait_for_build(bench);
  REQUIRE(bench.apply(cmd::fly_to_finding(0)));
  bench.poll();
  CHECK_FALSE(bench.active()->stage.flight);
  CHECK(bench.active()->stage.view.camera == laid.camera());
}

TEST_CASE("a hand on the camera ends its flight") {
  LaidLongDwell laid;
  REQUIRE(laid.bench.apply(cmd::fly_to_finding(1)));
  laid.after_ms(0);
  laid.after_ms(100);
  laid.bench.apply(cmd::orbit(5.0, 0.0));
  const Camera mine = laid.camera();
  for (int i = 0; i < 40; ++i) laid.after_ms(16);
  CHECK(laid.camera() == mine);
}

TEST_CASE(
    "what a flight opened is closed by the next one and when the finding is let go, but not what a person cut") {
  LaidLongDwell laid;
  const auto& findings = laid.bench.wound()->measurements().findings;
  std::optional<std::size_t> wedged, peeled;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    REQUIRE(laid.bench.apply(cmd::fly_to_finding(i)));
    laid.land();
    if (laid.view().wedge) wedged = i;
    if (laid.view().last_layer) peeled = i;
    CHECK_FALSE((laid.view().wedge && laid.view().last_layer));
  }
  REQUIRE(wedged);
  REQUIRE(peeled);
  REQUIRE(laid.bench.apply(cmd::fly_to_finding(*wedged)));
  laid.land();
  const Camera there = laid.camera();
  REQUIRE(laid.bench.apply(cmd::choose_finding()));
  CHECK_FALSE(laid.view().wedge);
  CHECK(laid.camera() == there);

  REQUIRE(laid.bench.apply(cmd::fly_to_finding(*wedged)));
  REQUIRE(laid.bench.apply(cmd::set_wedge(Sector{1.0, 2.0})));
  REQUIRE(laid.bench.apply(cmd::choose_finding()));
  CHECK(laid.view().wedge == Sector{1.0, 2.0});
}

TEST_CASE("a catch of the payoff is flown to with the wind unwound as far as that, and its place picked") {
  // A limit that fiber led aside by the eye exceeds near the flanges: e^(0.5 atan(1 / 40)) is 1.013.
  std::string plan = small_plan;
  plan += "\n[limits]\npayoff_force = 1.005\n";
  LaidBench laid(plan);
  REQUIRE(wait_until(laid.bench, [&] { return laid.bench.wound()->takeup() != nullptr; }));
  const PayoffRun& payoff = *laid.bench.wound()->takeup()->payoff;
  REQUIRE(payoff.catches.size() > 1);
  REQUIRE(laid.bench.apply(cmd::fly_to_catch(1)));
  const PayoffCatch& caught = payoff.catches[1];
  const Stage& stage = laid.bench.active()->stage;
  const double stations = laid.bench.wound()->build().stations_per_turn;
  REQUIRE(stage.flight);
  CHECK(*stage.picked_turn == Approx(static_cast<double>(caught.node) / stations));
  if (caught.end_node < laid.bench.wound()->build().nodes.size()) {
    REQUIRE(stage.view.until_turn);
    CHECK(*stage.view.until_turn == Approx(static_cast<double>(caught.end_node) / stations).margin(0.05));
  }
  CHECK_FALSE(laid.bench.apply(cmd::fly_to_catch(payoff.catches.size())));
}
