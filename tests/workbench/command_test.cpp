// Commands: each can be given at any time, does what it says or says why not.
#include "bench_for_tests.h"

#include <limits>

#include "scene/marks.h"
#include "workbench/command_table.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

struct Laid {
  TemporaryFolder folder;
  Workbench bench;

  Laid() : bench(options_in(folder)) {
    REQUIRE(bench.apply(cmd::Open{folder.file("a.lay.toml", small_plan)}));
    wait_for_build(bench);
  }
  [[nodiscard]] const Stage& stage() const { return bench.active()->stage; }
  [[nodiscard]] const View& view() const { return stage().view; }
};

}  // namespace

TEST_CASE("the table: names, keys and help, no key twice") {
  std::set<std::string_view> keys, names;
  for (const CommandInfo& info : command_table()) {
    INFO(info.name);
    CHECK_FALSE(info.group.empty());
    CHECK(info.help.size() > 8);
    CHECK(info.help.back() == '.');
    CHECK(names.insert(info.name).second);
    if (!info.keys.empty()) CHECK(keys.insert(info.keys).second);
  }
  CHECK(command_table().size() > 50);
}

TEST_CASE("on an empty workbench each command works or gives a reason in words") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  CHECK_FALSE(bench.hint().empty());
  CHECK(bench.rows().empty());
  CHECK_FALSE(bench.seconds_to_next_poll());
  for (const CommandInfo& info : command_table()) {
    INFO(info.name);
    const std::string reason = bench.why_not(info.command);
    CHECK(bench.apply(info.command) == reason.empty());
    if (reason.empty()) continue;
    CHECK(reason.size() > 12);
    CHECK(reason.back() == '.');
    CHECK(bench.notices().back().text == reason);
  }
}

TEST_CASE("on a plan that is laid, too, in any order") {
  Laid laid;
  std::uint32_t random = 1;
  for (int i = 0; i < 600; ++i) {
    random = random * 1664525U + 1013904223U;
    const CommandInfo& info = command_table()[(random >> 8U) % command_table().size()];
    if (info.name == "Close" || info.name == "Save") continue;
    INFO(info.name);
    const std::string reason = laid.bench.why_not(info.command);
    CHECK(laid.bench.apply(info.command) == reason.empty());
    laid.bench.poll();
    REQUIRE(laid.bench.active() != nullptr);
    CHECK(std::isfinite(laid.view().camera.distance_mm));
  }
  CHECK(laid.bench.notices().size() <= 20);
}

TEST_CASE("numbers out of reason are brought in or refused") {
  Laid laid;
  const double infinity = std::numeric_limits<double>::infinity(), nan = std::nan("");
  for (const double bad : {infinity, -infinity, nan, 1e300, -1e300}) {
    for (const Command& command : std::initializer_list<Command>{
             cmd::ScrubLength{bad}, cmd::ScrubTurn{bad}, cmd::ScrubTime{bad}, cmd::SetRate{bad},
             cmd::ChangeRate{bad}, cmd::StepTurns{bad}, cmd::Orbit{bad, bad}, cmd::Zoom{bad},
             cmd::LookFrom{bad, bad}, cmd::SetScale{bad}, cmd::SetWedge{Sector{bad, 0.0}}, cmd::SetAxialCut{bad},
             cmd::SetXRange{bad, bad}, cmd::SetField{"traverse.pitch", bad},
             cmd::SetCamera{{{bad, bad, bad}, bad, bad, bad, bad}}}) {
      laid.bench.apply(command);
      laid.bench.poll();
      const Moment moment = moment_of(laid.stage().playback, *laid.bench.wound());
      CHECK(moment.turn >= 0.0);
      CHECK(moment.turn <= 100.0);
      CHECK(std::isfinite(laid.view().camera.distance_mm));
      CHECK(std::abs(laid.view().camera.elevation_deg) <= 90.0);
    }
  }
  CHECK_FALSE(laid.bench.apply(cmd::PeelOne{1}));
  CHECK_FALSE(laid.bench.apply(cmd::Activate{9}));
  CHECK_FALSE(laid.bench.apply(cmd::SetField{"traverse.colour", 1.0}));
  CHECK_FALSE(laid.bench.apply(cmd::RemoveStep{0}));
  CHECK_FALSE(laid.bench.apply(cmd::FlyToFinding{100000}));
  laid.bench.apply(cmd::PickNode{std::size_t{1} << 60U});
  CHECK_FALSE(laid.stage().picked_turn);
}

TEST_CASE("the first start opens the sample, a plan that is named goes before it") {
  TemporaryFolder folder;
  Workbench::Options options = options_in(folder);
  options.sample = sample("even");
  {
    Workbench bench(options);
    bench.start({});
    REQUIRE(bench.active() != nullptr);
    CHECK(document(bench).title() == "Sensor fiber, even build");
    CHECK(bench.settings().recent.empty());  // the sample is always at hand
  }
  Workbench bench(options);
  bench.start({folder.file("a.lay.toml", small_plan)});
  REQUIRE(bench.documents().size() == 1);
  CHECK(document(bench).title() == "Small spool");
}

TEST_CASE("of several plans at the start the first is in front, and one that is missing keeps none away") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  bench.start(
      {folder.file("a.lay.toml", small_plan), folder.file("none.lay.toml", small_plan) + "x", sample("even")});
  REQUIRE(bench.documents().size() == 2);
  CHECK(document(bench).title() == "Small spool");
  REQUIRE(bench.notices().size() == 1);
  CHECK_THAT(bench.notices().front().text, Catch::Contains("none.lay.toml"));
}

TEST_CASE("a plan that is open already is shown, not opened twice") {
  Laid laid;
  const std::string other = laid.folder.file("b.lay.toml", small_plan);
  laid.bench.apply(cmd::Open{other});
  CHECK(laid.bench.active_index() == 1);
  laid.bench.apply(cmd::Open{laid.folder.path().string() + "/./a.lay.toml"});
  CHECK(laid.bench.documents().size() == 2);
  CHECK(laid.bench.active_index() == 0);
  laid.bench.apply(cmd::Close{});
  CHECK(laid.bench.active_index() == 0);
  CHECK(document(laid.bench).path() == other);
  laid.bench.apply(cmd::Close{});
  CHECK_FALSE(laid.bench.active_index());
}

TEST_CASE("peel, one layer at a time and back") {
  Laid laid;
  const int layers = static_cast<int>(laid.bench.wound()->build().strokes.size());
  laid.bench.apply(cmd::PeelOne{-1});
  CHECK(laid.view().last_layer == layers - 1);
  laid.bench.apply(cmd::PeelOne{1});
  CHECK_FALSE(laid.view().last_layer);
  for (int i = 1; i < layers; ++i) CHECK(laid.bench.apply(cmd::PeelOne{-1}));
  CHECK_FALSE(laid.bench.apply(cmd::PeelOne{-1}));
  laid.bench.apply(cmd::ShowAll{});
  CHECK_FALSE(laid.view().last_layer);
}

TEST_CASE("wedge and axial cut open towards the eye") {
  Laid laid;
  laid.bench.apply(cmd::LookFrom{0.0, 0.0});  // from +Z: that is a quarter turn from the top (coordinates.h)
  const double toward = 0.5 * 3.14159265358979;
  laid.bench.apply(cmd::ToggleWedge{});
  CHECK(is_removed(removed_sectors(laid.view()), toward));
  CHECK_FALSE(is_removed(removed_sectors(laid.view()), toward + 1.0));
  laid.bench.apply(cmd::ToggleWedge{});
  laid.bench.apply(cmd::ToggleAxialCut{});
  CHECK(is_removed(removed_sectors(laid.view()), toward + 1.5));
  CHECK(is_removed(removed_sectors(laid.view()), toward - 1.5));
  CHECK_FALSE(is_removed(removed_sectors(laid.view()), toward + 1.6));
}

TEST_CASE("from turn to turn: along the fiber one revolution, up and down through the layers") {
  Laid laid;
  const Wound& wound = *laid.bench.wound();
  const auto stations = static_cast<std::size_t>(wound.build().stations_per_turn);
  CHECK_FALSE(laid.bench.apply(cmd::PickToward{Toward::next}));  // nothing is picked
  const std::size_t start = 30 * stations + 5;
  laid.bench.apply(cmd::PickNode{start});
  const auto picked = [&] { return *picked_node(laid.stage(), wound); };
  laid.bench.apply(cmd::PickToward{Toward::next});
  CHECK(picked() == start + stations);
  laid.bench.apply(cmd::PickToward{Toward::previous});
  CHECK(picked() == start);
  REQUIRE(laid.bench.apply(cmd::PickToward{Toward::above}));
  CHECK(wound.build().nodes.r(picked()) > wound.build().nodes.r(start));
  CHECK(wound.build().stroke_of(picked()) > wound.build().stroke_of(start));
  CHECK(picked() % stations == 5);
  laid.bench.apply(cmd::PickNode{start});
  REQUIRE(laid.bench.apply(cmd::PickToward{Toward::below}));
  CHECK(wound.build().stroke_of(picked()) == 0);
  CHECK_FALSE(laid.bench.apply(cmd::PickToward{Toward::below}));  // the barrel
  laid.bench.apply(cmd::ScrubToPicked{});
  CHECK(moment_of(laid.stage().playback, wound).turn == Approx(*laid.stage().picked_turn).margin(1e-6));
}

TEST_CASE("a picked turn and a chosen finding are found again in another build") {
  Laid laid;
  const auto stations = static_cast<std::size_t>(laid.bench.wound()->build().stations_per_turn);
  laid.bench.apply(cmd::PickNode{25 * stations});
  laid.bench.apply(cmd::ChooseFinding{1});
  const Finding before = laid.bench.wound()->measurements().findings[1];
  laid.bench.apply(cmd::TypeField{"wind.turns", "140"});
  wait_for_build(laid.bench);
  CHECK(*laid.stage().picked_turn == 25.0);
  CHECK(*picked_node(laid.stage(), *laid.bench.wound()) ==
        25 * static_cast<std::size_t>(laid.bench.wound()->build().stations_per_turn));
  REQUIRE(laid.view().chosen_finding);
  const Finding& after = laid.bench.wound()->measurements().findings[*laid.view().chosen_finding];
  CHECK(after.kind == before.kind);
  CHECK(after.side == before.side);
}

TEST_CASE("flown to, a finding is before the eye and uncovered") {
  Laid laid;
  const auto& findings = laid.bench.wound()->measurements().findings;
  REQUIRE_FALSE(findings.empty());
  laid.bench.apply(cmd::ToStart{});
  for (std::size_t i = 0; i < findings.size(); ++i) {
    REQUIRE(laid.bench.apply(cmd::FlyToFinding{i}));
    CHECK(laid.view().chosen_finding == i);
    CHECK_FALSE(laid.view().until_turn);
    bool seen = false;
    for (const Mark& mark : make_marks(laid.bench.wound()->source, laid.view())) {
      if (mark.finding != i) continue;
      seen = true;
      CHECK(mark.chosen);
      const auto at = in_picture(laid.view(), mark.place);
      REQUIRE(at);
      CHECK(at->x > 0.0);
      CHECK(at->x < laid.view().width_px);
      CHECK(at->y > 0.0);
      CHECK(at->y < laid.view().height_px);
    }
    CHECK(seen);
  }
  laid.bench.apply(cmd::FlyToNextFinding{1});
  CHECK(laid.view().chosen_finding == 0);  // round and round
  laid.bench.apply(cmd::FlyToNextFinding{-1});
  CHECK(laid.view().chosen_finding == findings.size() - 1);
}

TEST_CASE("choices hold for every view") {
  Laid laid;
  laid.bench.apply(cmd::Open{laid.folder.file("b.lay.toml", small_plan)});
  laid.bench.apply(cmd::ToggleTheme{});
  laid.bench.apply(cmd::ToggleUnits{});
  laid.bench.apply(cmd::ToggleSeeThrough{});
  for (const Desk& desk : laid.bench.documents()) {
    CHECK(desk.stage.view.theme == Theme::dark);
    CHECK(desk.stage.view.units == Units::inch);
    CHECK(desk.stage.view.flanges_see_through);
  }
  // The rows follow.
  CHECK(laid.bench.rows().front().unit->name == "in");
}

TEST_CASE("a number typed while inches are shown counts in inches") {
  Laid laid;
  laid.bench.apply(cmd::ToggleUnits{});
  laid.bench.apply(cmd::TypeField{"traverse.pitch", "0.05"});
  CHECK(document(laid.bench).state().draft.traverse.pitch_mm == Approx(1.27).epsilon(1e-14));
}

TEST_CASE("a wind by another measure goes as far as it did") {
  Laid laid;
  laid.bench.apply(cmd::SetWindEnd{WindEnd::length});
  wait_for_build(laid.bench);
  CHECK(laid.bench.wound()->build().turns == Approx(100.0).margin(1.0));
  CHECK(laid.bench.wound()->build().stopped_by == StopReason::length);
}
