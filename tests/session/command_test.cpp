// Commands: each can be given at any time, does what it says or says why not.
#include "bench_for_tests.h"

#include <limits>

#include "scene/marks.h"
#include "session/command_rows.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

struct LaidSmall {
  TemporaryFolder folder;
  Workbench bench;

  LaidSmall() : bench(options_in(folder)) {
    REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
    wait_for_build(bench);
  }
  [[nodiscard]] const Stage& stage() const { return bench.active()->stage; }
  [[nodiscard]] const View& view() const { return stage().view; }
};

}  // namespace

TEST_CASE("the rows: names, keys and help, no key and no command twice") {
  std::set<std::string_view> keys, names, commands;
  for (const CommandRow& row : command_rows()) {
    INFO(row.name);
    CHECK(row.help.size() > 8);
    CHECK(row.help.back() == '.');
    CHECK(names.insert(row.name).second);
    CHECK(commands.insert(row.command.name()).second);
    if (!row.keys.empty()) CHECK(keys.insert(row.keys).second);
    CHECK(row_of(row.command) == &row);
    CHECK(row_of_keys(row.keys) == (row.keys.empty() ? nullptr : &row));
  }
  CHECK(command_rows().size() > 50);
}

TEST_CASE("menus stand one after the other, each in one piece, and Alt with a letter tells them apart") {
  std::set<char> letters;
  for (const std::string_view group : command_groups()) CHECK(letters.insert(group.front()).second);
  CHECK(command_groups().front() == "File");
  CHECK(command_groups().back() == "Help");
}

TEST_CASE("words beside a command have the keys of its row, before a full stop") {
  CHECK(with_keys("Wind to here", cmd::scrub_to_picked()) == "Wind to here (T)");
  CHECK(with_keys("Once more.", cmd::lay_again()) == "Once more (F5).");
  CHECK(with_keys("The same", cmd::leave_out_unknown()) == "The same");  // by menu alone
  CHECK(with_keys("The same", cmd::set_seed(2)) == "The same");          // in no menu
  // Those that differ by their arguments alone are told apart.
  CHECK(with_keys("On", cmd::step_turns(10.0)) == "On (Shift+Right)");
  CHECK(with_keys("Back", cmd::step_turns(-1.0)) == "Back (Left)");
}

TEST_CASE("what can be on or off is told by its command, in the picture in hand") {
  LaidSmall laid;
  for (const CommandRow& row : command_rows()) {
    if (row.also != Also::in_view_tab) continue;
    INFO(row.name);
    const bool before = row.command.is_on(laid.view());
    REQUIRE(laid.bench.apply(row.command));
    CHECK(row.command.is_on(laid.view()) == !before);
  }
  CHECK_FALSE(cmd::toggle_wedge().is_on(laid.view()));
  laid.bench.apply(cmd::toggle_wedge());
  CHECK(cmd::toggle_wedge().is_on(laid.view()));
  CHECK_FALSE(cmd::fit_view().is_on(laid.view()));  // is neither
}

TEST_CASE("a menu says what would be undone, and nothing of it where no plan is open") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  CHECK(cmd::undo().label(bench).empty());
  bench.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
  CHECK(cmd::undo().label(bench).empty());
  bench.apply(cmd::set_title("Another"));
  CHECK(cmd::undo().label(bench) == "Undo: title");
  bench.apply(cmd::undo());
  CHECK(cmd::redo().label(bench) == "Redo: title");
}

TEST_CASE("on an empty workbench each command works or gives a reason in words") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  CHECK_FALSE(bench.hint().empty());
  CHECK(bench.rows().empty());
  CHECK_FALSE(bench.seconds_to_next_poll());
  for (const CommandRow& row : command_rows()) {
    INFO(row.name);
    const std::string reason = bench.why_not(row.command);
    CHECK(bench.apply(row.command) == reason.empty());
    if (reason.empty()) continue;
    CHECK(reason.size() > 12);
    CHECK(reason.back() == '.');
    CHECK(bench.notices().back().text == reason);
  }
}

TEST_CASE("on a plan that is laid, too, in any order") {
  LaidSmall laid;
  std::uint32_t random = 1;
  for (int i = 0; i < 600; ++i) {
    random = random * 1664525U + 1013904223U;
    const CommandRow& row = command_rows()[(random >> 8U) % command_rows().size()];
    if (row.name == "Close" || row.name == "Save") continue;
    INFO(row.name);
    const std::string reason = laid.bench.why_not(row.command);
    CHECK(laid.bench.apply(row.command) == reason.empty());
    laid.bench.poll();
    REQUIRE(laid.bench.active() != nullptr);
    CHECK(std::isfinite(laid.view().camera.distance_mm));
  }
  CHECK(laid.bench.notices().size() <= 20);
}

TEST_CASE("numbers out of reason are brought in or refused") {
  LaidSmall laid;
  const double infinity = std::numeric_limits<double>::infinity(), nan = std::nan("");
  for (const double bad : {infinity, -infinity, nan, 1e300, -1e300}) {
    for (const Command& command : std::initializer_list<Command>{
             cmd::scrub_length(bad), cmd::scrub_turn(bad), cmd::scrub_time(bad), cmd::set_rate(bad),
             cmd::change_rate(bad), cmd::step_turns(bad), cmd::orbit(bad, bad), cmd::zoom(bad),
             cmd::look_from(bad, bad), cmd::set_scale(bad), cmd::set_wedge(Sector{bad, 0.0}),
             cmd::set_axial_cut(bad), cmd::set_x_range(bad, bad), cmd::set_field("traverse.pitch", bad),
             cmd::set_camera({{bad, bad, bad}, bad, bad, bad, bad})}) {
      laid.bench.apply(command);
      laid.bench.poll();
      const Moment moment = moment_of(laid.stage().playback, *laid.bench.wound());
      CHECK(moment.turn >= 0.0);
      CHECK(moment.turn <= 100.0);
      CHECK(std::isfinite(laid.view().camera.distance_mm));
      CHECK(std::abs(laid.view().camera.elevation_deg) <= 90.0);
    }
  }
  CHECK_FALSE(laid.bench.apply(cmd::peel_one(1)));
  CHECK_FALSE(laid.bench.apply(cmd::activate(9)));
  CHECK_FALSE(laid.bench.apply(cmd::set_field("traverse.colour", 1.0)));
  CHECK_FALSE(laid.bench.apply(cmd::remove_step(0)));
  CHECK_FALSE(laid.bench.apply(cmd::fly_to_finding(100000)));
  laid.bench.apply(cmd::pick_node(std::size_t{1} << 60U));
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
    // It is a copy, for which a name is asked.
    CHECK(document(bench).path().empty());
    CHECK(document(bench).name() == "Sensor fiber, even build");
    CHECK_FALSE(document(bench).dirty());
    REQUIRE(bench.apply(cmd::save()));
    CHECK(bench.question() == cmd::Question::file_to_save);
    // Asked for again, it comes to the front.
    REQUIRE(bench.apply(cmd::open(folder.file("other.lay.toml", small_plan))));
    REQUIRE(bench.apply(cmd::open_sample()));
    CHECK(bench.documents().size() == 2);
    CHECK(document(bench).title() == "Sensor fiber, even build");
    const std::string mine = (folder.path() / "mine.lay.toml").string();
    REQUIRE(bench.apply(cmd::save_as(mine)));
    CHECK(contents(mine) == contents(options.sample));
    CHECK(document(bench).name() == "mine.lay.toml");
    // From then on it is another plan than the sample.
    REQUIRE(bench.apply(cmd::open_sample()));
    CHECK(bench.documents().size() == 3);
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
  LaidSmall laid;
  const std::string other = laid.folder.file("b.lay.toml", small_plan);
  laid.bench.apply(cmd::open(other));
  CHECK(laid.bench.active_index() == 1);
  laid.bench.apply(cmd::open(laid.folder.path().string() + "/./a.lay.toml"));
  CHECK(laid.bench.documents().size() == 2);
  CHECK(laid.bench.active_index() == 0);
  laid.bench.apply(cmd::close());
  CHECK(laid.bench.active_index() == 0);
  CHECK(document(laid.bench).path() == other);
  laid.bench.apply(cmd::close());
  CHECK_FALSE(laid.bench.active_index());
}

TEST_CASE("peel, one layer at a time and back") {
  LaidSmall laid;
  const int layers = static_cast<int>(laid.bench.wound()->build().strokes.size());
  laid.bench.apply(cmd::peel_one(-1));
  CHECK(laid.view().last_layer == layers - 1);
  laid.bench.apply(cmd::peel_one(1));
  CHECK_FALSE(laid.view().last_layer);
  for (int i = 1; i < layers; ++i) CHECK(laid.bench.apply(cmd::peel_one(-1)));
  CHECK_FALSE(laid.bench.apply(cmd::peel_one(-1)));
  laid.bench.apply(cmd::show_all());
  CHECK_FALSE(laid.view().last_layer);
}

TEST_CASE("wedge and axial cut open towards the eye") {
  LaidSmall laid;
  laid.bench.apply(cmd::look_from(0.0, 0.0));  // from +Z: that is a quarter turn from the top (coordinates.h)
  const double toward = 0.5 * 3.14159265358979;
  laid.bench.apply(cmd::toggle_wedge());
  CHECK(is_removed(removed_sectors(laid.view()), toward));
  CHECK_FALSE(is_removed(removed_sectors(laid.view()), toward + 1.0));
  laid.bench.apply(cmd::toggle_wedge());
  laid.bench.apply(cmd::toggle_axial_cut());
  CHECK(is_removed(removed_sectors(laid.view()), toward + 1.5));
  CHECK(is_removed(removed_sectors(laid.view()), toward - 1.5));
  CHECK_FALSE(is_removed(removed_sectors(laid.view()), toward + 1.6));
}

TEST_CASE("from turn to turn: along the fiber one revolution, up and down through the layers") {
  LaidSmall laid;
  const Wound& wound = *laid.bench.wound();
  const auto stations = static_cast<std::size_t>(wound.build().stations_per_turn);
  CHECK_FALSE(laid.bench.apply(cmd::pick_toward(Toward::next)));  // nothing is picked
  const std::size_t start = 30 * stations + 5;
  laid.bench.apply(cmd::pick_node(start));
  const auto picked = [&] { return *picked_node(laid.stage(), wound); };
  laid.bench.apply(cmd::pick_toward(Toward::next));
  CHECK(picked() == start + stations);
  laid.bench.apply(cmd::pick_toward(Toward::previous));
  CHECK(picked() == start);
  REQUIRE(laid.bench.apply(cmd::pick_toward(Toward::above)));
  CHECK(wound.build().nodes.r(picked()) > wound.build().nodes.r(start));
  CHECK(wound.build().stroke_of(picked()) > wound.build().stroke_of(start));
  CHECK(picked() % stations == 5);
  laid.bench.apply(cmd::pick_node(start));
  REQUIRE(laid.bench.apply(cmd::pick_toward(Toward::below)));
  CHECK(wound.build().stroke_of(picked()) == 0);
  CHECK_FALSE(laid.bench.apply(cmd::pick_toward(Toward::below)));  // the barrel
  laid.bench.apply(cmd::scrub_to_picked());
  CHECK(moment_of(laid.stage().playback, wound).turn == Approx(*laid.stage().picked_turn).margin(1e-6));
}

TEST_CASE("a picked turn and a chosen finding are found again in another build") {
  LaidSmall laid;
  const auto stations = static_cast<std::size_t>(laid.bench.wound()->build().stations_per_turn);
  laid.bench.apply(cmd::pick_node(25 * stations));
  laid.bench.apply(cmd::choose_finding(1));
  const Finding before = laid.bench.wound()->measurements().findings[1];
  laid.bench.apply(cmd::type_field("wind.turns", "140"));
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
  LaidSmall laid;
  const auto& findings = laid.bench.wound()->measurements().findings;
  REQUIRE_FALSE(findings.empty());
  laid.bench.apply(cmd::to_start());
  for (std::size_t i = 0; i < findings.size(); ++i) {
    REQUIRE(laid.bench.apply(cmd::fly_to_finding(i)));
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
  laid.bench.apply(cmd::fly_to_next_finding(1));
  CHECK(laid.view().chosen_finding == 0);  // round and round
  laid.bench.apply(cmd::fly_to_next_finding(-1));
  CHECK(laid.view().chosen_finding == findings.size() - 1);
}

TEST_CASE("choices hold for every view") {
  LaidSmall laid;
  laid.bench.apply(cmd::open(laid.folder.file("b.lay.toml", small_plan)));
  laid.bench.apply(cmd::toggle_theme());
  laid.bench.apply(cmd::toggle_units());
  laid.bench.apply(row_of_keys("S")->command);
  laid.bench.apply(row_of_keys("E")->command);
  CHECK_FALSE(laid.bench.settings().view.legend);
  for (const Desk& desk : laid.bench.documents()) {
    CHECK_FALSE(desk.stage.view.legend);
    CHECK(desk.stage.view.theme == Theme::dark);
    CHECK(desk.stage.view.units == Units::inch);
    CHECK(desk.stage.view.flanges_see_through);
  }
  // The rows follow.
  CHECK(laid.bench.rows().front().unit->name == "in");
}

TEST_CASE("a number typed while inches are shown counts in inches") {
  LaidSmall laid;
  laid.bench.apply(cmd::toggle_units());
  laid.bench.apply(cmd::type_field("traverse.pitch", "0.05"));
  CHECK(document(laid.bench).state().draft.traverse.pitch_mm == Approx(1.27).epsilon(1e-14));
}

TEST_CASE("a wind by another measure goes as far as it did") {
  LaidSmall laid;
  laid.bench.apply(cmd::set_wind_end(WindEnd::length));
  wait_for_build(laid.bench);
  CHECK(laid.bench.wound()->build().turns == Approx(100.0).margin(1.0));
  CHECK(laid.bench.wound()->build().stopped_by == StopReason::length);
}
