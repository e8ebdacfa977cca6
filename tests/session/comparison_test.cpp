// Two builds side by side: linked, and as a table.
#include "bench_for_tests.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

const DifferenceRow& row_of(const std::vector<DifferenceRow>& rows, const std::string& name) {
  for (const DifferenceRow& row : rows) {
    if (row.name == name) return row;
  }
  FAIL("no row " << name);
  return rows.front();
}

struct Pinned {
  TemporaryFolder folder;
  Workbench bench;

  Pinned() : bench(options_in(folder)) {
    bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
    wait_for_build(bench);
    REQUIRE(bench.apply(cmd::pin_build()));
  }
};

}  // namespace

TEST_CASE("a build compared with itself differs in nothing") {
  Pinned pinned;
  const DifferenceTable table = *pinned.bench.difference();
  CHECK(table.settings.empty());
  for (const DifferenceRow& row : table.totals) {
    CHECK(row.difference == "same");
    CHECK(row.first == row.second);
  }
  for (const DifferenceRow& row : table.findings) CHECK(row.sign == 0);
}

TEST_CASE("the table tells settings, totals and findings that changed") {
  Pinned pinned;
  pinned.bench.apply(cmd::type_field("wind.turns", "120"));
  pinned.bench.apply(cmd::type_field("traverse.pitch", "1.5 mm"));
  wait_for_build(pinned.bench);
  const DifferenceTable table = *pinned.bench.difference();
  CHECK(table.settings.size() == 2);
  const DifferenceRow& pitch = row_of(table.settings, "Traverse: pitch");
  CHECK(pitch.first == "1.02 mm");
  CHECK(pitch.second == "1.5 mm");
  CHECK(pitch.difference == "+0.48 mm");
  const DifferenceRow& turns = row_of(table.totals, "turns");
  CHECK(turns.first == "100.0");
  CHECK(turns.second == "120.0");
  CHECK(turns.difference == "+20.0");
  CHECK(turns.sign == 1);
  // Looser by half: the fiber fills less.
  CHECK(row_of(table.totals, "fill factor").sign == -1);
  double places = 0.0;
  for (const Finding& finding : pinned.bench.wound()->measurements().findings) {
    if (finding.kind == FindingKind::gap) places += finding.occurrences;
  }
  if (places > 0.0) CHECK(row_of(table.findings, "gap").sign == 1);
}

TEST_CASE("inches in the table") {
  Pinned pinned;
  pinned.bench.apply(cmd::toggle_units());
  const DifferenceRow row = row_of(pinned.bench.difference()->totals, "outer diameter, middle");
  CHECK(row.first.substr(row.first.size() - 3) == " in");
  const double inches = std::stod(row.first);
  CHECK(inches == Approx(pinned.bench.wound()->measurements().outer_diameter.middle_mm / 25.4).margin(6e-5));
}

TEST_CASE("linked, both sides have one camera and one scrubber, apart, each its own") {
  Pinned pinned;
  pinned.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  wait_for_build(pinned.bench);
  const Stage& own = pinned.bench.active()->stage;
  pinned.bench.apply(cmd::orbit(25.0, 5.0));
  pinned.bench.apply(cmd::scrub_length(5000.0));
  const Stage linked = pinned.bench.other_stage();
  CHECK(linked.view.camera == own.view.camera);
  CHECK(moment_of(linked.playback, *pinned.bench.other_wound()).length_mm == Approx(5000.0));
  // The same length is another turn on the other build.
  REQUIRE(linked.view.until_turn);
  CHECK(*linked.view.until_turn == Approx(moment_of(linked.playback, *pinned.bench.other_wound()).turn));

  pinned.bench.apply(cmd::toggle_linked());
  pinned.bench.apply(cmd::orbit(25.0, 5.0));
  CHECK_FALSE(pinned.bench.other_stage().view.camera == own.view.camera);
  CHECK(pinned.bench.other_stage().view.camera == linked.view.camera);
  pinned.bench.apply(cmd::stop_comparing());
  CHECK_FALSE(pinned.bench.difference());
}

TEST_CASE("both sides are coloured over one range, for as long as they stand side by side") {
  Pinned pinned;
  pinned.bench.apply(cmd::set_colouring(Colouring::gap));
  pinned.bench.apply(cmd::type_field("traverse.pitch", "1.5 mm"));
  wait_for_build(pinned.bench);
  const auto range_of = [](const Stage& stage) { return stage.view.range; };
  const std::optional<ColourRange> range = range_of(pinned.bench.active()->stage);
  REQUIRE(range);
  CHECK(range->colouring == Colouring::gap);
  CHECK(range_of(pinned.bench.other_stage()) == range);
  // It stays while the scrubber moves, and is another one in inches and of another colouring.
  pinned.bench.apply(cmd::scrub_length(5000.0));
  CHECK(range_of(pinned.bench.active()->stage) == range);
  pinned.bench.apply(cmd::set_colouring(Colouring::height));
  const double mm = range_of(pinned.bench.active()->stage)->high;
  pinned.bench.apply(cmd::toggle_units());
  CHECK(range_of(pinned.bench.active()->stage)->high < mm);
  pinned.bench.apply(cmd::toggle_linked());
  CHECK(range_of(pinned.bench.other_stage()) == range_of(pinned.bench.active()->stage));
  pinned.bench.apply(cmd::stop_comparing());
  CHECK_FALSE(range_of(pinned.bench.active()->stage));
}

TEST_CASE("apart, commands go to the picture in hand alone, and the other does not move") {
  Pinned pinned;
  pinned.bench.apply(cmd::type_field("traverse.pitch", "1.5 mm"));
  wait_for_build(pinned.bench);
  CHECK_FALSE(pinned.bench.apply(cmd::take_in_hand(true)));  // linked
  REQUIRE(pinned.bench.apply(cmd::toggle_linked()));
  CHECK_FALSE(pinned.bench.other_in_hand());
  REQUIRE(pinned.bench.apply(cmd::take_in_hand()));
  CHECK(pinned.bench.other_in_hand());
  CHECK(pinned.bench.wound_in_hand() == pinned.bench.other_wound());

  const View own = pinned.bench.active()->stage.view;
  const Playback own_playback = pinned.bench.active()->stage.playback;
  const auto other = [&]() -> View { return pinned.bench.other_stage().view; };
  REQUIRE(pinned.bench.apply(cmd::orbit(40.0, 10.0)));
  CHECK(other().camera.azimuth_deg == Approx(own.camera.azimuth_deg + 40.0));
  REQUIRE(pinned.bench.apply(cmd::toggle_wedge()));
  CHECK(other().wedge);
  REQUIRE(pinned.bench.apply(cmd::peel_one(-1)));
  CHECK(other().last_layer == static_cast<int>(pinned.bench.other_wound()->build().strokes.size()) - 1);
  REQUIRE(pinned.bench.apply(cmd::scrub_turn(30.0)));
  CHECK(other().until_turn == Approx(30.0));
  REQUIRE(pinned.bench.apply(cmd::pick_node(std::size_t{100})));
  CHECK(pinned.bench.other_stage().picked_turn);
  if (!pinned.bench.other_wound()->measurements().findings.empty()) {
    REQUIRE(pinned.bench.apply(cmd::fly_to_finding(0)));
    CHECK(other().chosen_finding == 0U);
  }
  CHECK(pinned.bench.active()->stage.view == own);
  CHECK(pinned.bench.active()->stage.playback == own_playback);
  CHECK_FALSE(pinned.bench.active()->stage.picked_turn);

  // It plays alone, too.
  pinned.bench.apply(cmd::to_start());
  pinned.bench.apply(cmd::play_pause());
  auto now = Workbench::Clock::now() + std::chrono::hours(1);
  pinned.bench.poll(now);
  CHECK(pinned.bench.poll(now += std::chrono::milliseconds(100)));
  CHECK(pinned.bench.other_stage().playback.wanted_mm > 0.0);
  CHECK(*pinned.bench.seconds_to_next_poll() < 0.02);
  CHECK(pinned.bench.active()->stage.view == own);

  // Back in hand: now the first one moves, and the other stays.
  REQUIRE(pinned.bench.apply(cmd::take_in_hand(false)));
  const View before = other();
  REQUIRE(pinned.bench.apply(cmd::orbit(-15.0, 0.0)));
  CHECK(pinned.bench.active()->stage.view.camera.azimuth_deg == Approx(own.camera.azimuth_deg - 15.0));
  CHECK(other().camera == before.camera);
  // Preferences are of both; so is the size of the pictures.
  REQUIRE(pinned.bench.apply(cmd::toggle_theme()));
  CHECK(other().theme == pinned.bench.active()->stage.view.theme);
  REQUIRE(pinned.bench.apply(cmd::set_picture_size(300, 500)));
  CHECK(other().width_px == 300);
  // Linked again, both are one.
  REQUIRE(pinned.bench.apply(cmd::toggle_linked()));
  CHECK_FALSE(pinned.bench.other_in_hand());
  CHECK(other().camera == pinned.bench.active()->stage.view.camera);
}

TEST_CASE("two open plans are compared, when the other closes, the comparison ends") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
  CHECK_FALSE(bench.apply(cmd::compare_with(0)));
  bench.apply(cmd::open(sample("parallel")));
  REQUIRE(bench.apply(cmd::compare_with(0)));
  REQUIRE(wait_until(bench, [&] { return bench.difference().has_value(); }));
  CHECK(bench.comparison()->name == "a.lay.toml");
  bench.apply(cmd::activate(0));
  bench.apply(cmd::close());
  CHECK_FALSE(bench.comparison());
}
