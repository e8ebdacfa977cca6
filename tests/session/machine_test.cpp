// The machine's side in the workbench: every build has it, figures of a place, the set-up sheet into a file.
#include "bench_for_tests.h"

#include <algorithm>
#include <numbers>

#include "desk/machine_quantity.h"
#include "plan/plan_file.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

constexpr const char* takeup = R"(tension = "2 N"

[takeup]
control = "constant torque"
torque_at_full_current = "0.5 N*m"
full_current = "0.5 A"
speed_ceiling = "300 rpm"
)";

const MachineQuantity& quantity(const std::string& id) {
  const auto& all = machine_quantities();
  return *std::find_if(all.begin(), all.end(), [&](const MachineQuantity& q) { return q.id == id; });
}

struct Winder : LaidBench {
  explicit Winder(const std::string& plan) : LaidBench(plan) {
    REQUIRE(wait_until(bench, [&] { return bench.wound()->takeup() != nullptr; }));
  }
  [[nodiscard]] std::vector<MachineRow> rows(Units units = Units::metric) const {
    const Wound& wound = *bench.wound();
    return machine_rows(wound, *wound.takeup(), moment_of(bench.active()->stage.playback, wound), units);
  }
  [[nodiscard]] MachineRow row(const std::string& id, Units units = Units::metric) const {
    for (const MachineRow& row : rows(units)) {
      if (row.id == id) return row;
    }
    return {};
  }
};

double number_in(const std::string& text) { return std::stod(text); }

Drawing page_with(const std::string& words) {
  Drawing page;
  page.add(Text{{10.0, 10.0}, words, 3.0, Align::start, false, false, {}});
  return page;
}

}  // namespace

TEST_CASE("every build gets its machine's side, the first look's too, and it is that of take_up()") {
  Errands errands;
  Laying laying([] {}, errands.queue());
  laying.lay(load_plan(sample("even")).value(), 1);
  std::vector<WoundPtr> all;
  const auto end = Workbench::Clock::now() + std::chrono::seconds(500);  // only ends what never comes
  while (all.empty() || !all.back()->pass.full() || !all.back()->takeup()) {
    REQUIRE(Workbench::Clock::now() < end);
    if (WoundPtr fresh = laying.take()) all.push_back(fresh);
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  CHECK(laying.take_takeup_news());
  for (const WoundPtr& wound : all) {
    while (!wound->takeup()) REQUIRE(Workbench::Clock::now() < end);
    Progress progress;
    const TakeupRun at_once = take_up(wound->plan(), wound->build(), wound->measurements(), progress);
    CHECK(wound->takeup()->curves.tension_N == at_once.curves.tension_N);
    CHECK(wound->takeup()->curves.spool_rpm == at_once.curves.spool_rpm);
    CHECK(wound->takeup()->warnings.size() == at_once.warnings.size());
    CHECK_FALSE(at_once.curves.tension_N.empty());
  }
}

TEST_CASE("figures of a place: those of the first turn from closed forms") {
  Winder winder(std::string(small_plan) + takeup);
  winder.bench.apply(cmd::to_start());
  // 1 mm fiber on a 100 mm barrel: the centre line is at 101 mm.
  CHECK(number_in(winder.row("diameter").text) == Approx(101.0).margin(0.006));
  CHECK(winder.row("diameter").text.ends_with(" mm"));
  CHECK(number_in(winder.row("tension").text) == Approx(2.0).margin(0.0006));
  // 1 m/s over a turn of pi 101 mm, and the little that its slope adds.
  const double rpm = 60.0 * 1000.0 / (std::numbers::pi * 101.0);
  CHECK(number_in(winder.row("spool_speed").text) == Approx(rpm).epsilon(2e-4));
  CHECK(number_in(winder.row("traverse_speed").text) == Approx(rpm / 60.0 * 1.02).epsilon(4e-4));
  CHECK(number_in(winder.row("slip").text) == Approx(300.0 - rpm).margin(0.06));
  CHECK(number_in(winder.row("torque").text) == Approx(2.0 * 0.0505).epsilon(1e-3));
  CHECK(number_in(winder.row("current").text) == Approx(0.5 * 0.101 / 0.5).epsilon(1e-3));
  CHECK(number_in(winder.row("heat").text) ==
        Approx(0.101 * (300.0 - rpm) * 2.0 * std::numbers::pi / 60.0).epsilon(1e-3));
  CHECK(number_in(winder.row("diameter", Units::inch).text) == Approx(101.0 / 25.4).margin(0.0006));
  CHECK(winder.row("tension", Units::inch).text.ends_with(" lbf"));
  CHECK(winder.row("since_start").text == "0 s");
}

TEST_CASE("figures of a place follow the scrubber, constant torque: tension times radius stays") {
  Winder winder(std::string(small_plan) + takeup);
  const double length = winder.bench.wound()->build().length_mm;
  double turns = -1.0;
  for (const double share : {0.1, 0.35, 0.6, 0.85, 1.0}) {
    winder.bench.apply(cmd::scrub_length(share * length));
    CHECK(number_in(winder.row("diameter").text) * number_in(winder.row("tension").text) ==
          Approx(202.0).epsilon(5e-4));
    CHECK(number_in(winder.row("turns").text) > turns);
    turns = number_in(winder.row("turns").text);
    CHECK(number_in(winder.row("counter").text) == Approx(share * length / 1e3).margin(0.051));
  }
  CHECK(winder.row("to_finish").text == "0 s");
  // 19.1 turns from stop to stop: 100 turns end in the sixth layer.
  CHECK(winder.row("layer").text == "6 of 6");
}

TEST_CASE("at the change of layers a figure is that of the layer in which the place lies") {
  TakeupRun run;
  run.curves.length_mm = {0.0, 10.0, 20.0, 30.0};
  run.curves.layer = {1, 1, 2, 2};
  run.curves.radius_mm = {50.0, 50.5, 51.0, 52.0};
  const MachineQuantity& diameter = quantity("diameter");
  CHECK(value_at(diameter, run, 5.0, 1) == Approx(50.25));
  CHECK(value_at(diameter, run, 12.0, 1) == Approx(50.5));
  CHECK(value_at(diameter, run, 12.0, 2) == Approx(51.0));
  CHECK(value_at(diameter, run, 25.0, 2) == Approx(51.5));
  CHECK(value_at(diameter, run, 99.0, 2) == Approx(52.0));
  CHECK(value_at(diameter, run, -1.0, 1) == Approx(50.0));
  CHECK_FALSE(value_at(quantity("tension"), run, 5.0, 1));
}

TEST_CASE("what the plan does not say is not told, the key to fill in is") {
  std::string text = small_plan;
  text.erase(text.find("line_speed"));
  const Winder winder(text);
  CHECK(winder.row("tension").text.empty());
  CHECK(winder.row("tension").missing == "wind.tension");
  CHECK(winder.row("spool_speed").missing == "wind.line_speed");
  CHECK(winder.row("to_finish").missing == "wind.line_speed");
  CHECK_FALSE(winder.row("diameter").text.empty());
  // Without a [takeup] there is no clutch.
  CHECK(winder.row("slip").id.empty());
  const Winder pulled(text + "tension = \"2 N\"\n");
  CHECK(pulled.row("tension").missing == "takeup.control");
}

TEST_CASE("the sheet is saved by the name's ending, in the background") {
  Winder winder(small_plan);
  Workbench& bench = winder.bench;
  const auto pages = std::make_shared<const std::vector<Drawing>>(std::vector{page_with("one"), page_with("two")});
  const auto path = [&](const char* name) { return (winder.folder.path() / name).string(); };
  const auto saved = [&](const char* name, int page) {
    REQUIRE(bench.apply(cmd::save_sheet(path(name), pages, page)));
    REQUIRE(wait_until(bench, [&] { return bench.sheet_saving() && bench.sheet_saving()->outcome; }));
    return bench.sheet_saving()->outcome->empty();
  };
  REQUIRE(bench.apply(cmd::ask(cmd::Question::setup_sheet)));
  CHECK(saved("a.pdf", 1));
  CHECK(contents(path("a.pdf")).starts_with("%PDF"));
  CHECK(bench.question() == cmd::Question::setup_sheet);  // it is looked at again
  CHECK(saved("a.svg", 1));
  CHECK(saved("b.svg", 2));
  CHECK(contents(path("a.svg")) != contents(path("b.svg")));
  CHECK(saved("a.PNG", 2));
  CHECK(contents(path("a.PNG")).substr(1, 3) == "PNG");

  CHECK_FALSE(bench.apply(cmd::save_sheet(path("a.txt"), pages, 1)));
  CHECK(bench.notices().back().text.find(".pdf") != std::string::npos);
  CHECK_FALSE(bench.apply(cmd::save_sheet(path("a.pdf"), nullptr, 1)));
  CHECK_FALSE(bench.apply(cmd::save_sheet(path("a.svg"), pages, 3)));

  const std::string before = contents(path("a.pdf"));
  CHECK_FALSE(saved("missing/a.pdf", 1));
  CHECK_FALSE(bench.sheet_saving()->outcome->front().what.empty());
  CHECK(contents(path("a.pdf")) == before);
}

TEST_CASE("a sheet that fails when nobody looks at it any more is told of") {
  Winder winder(small_plan);
  Workbench& bench = winder.bench;
  const auto pages = std::make_shared<const std::vector<Drawing>>(std::vector{page_with("one")});
  REQUIRE(bench.apply(cmd::save_sheet((winder.folder.path() / "no" / "a.pdf").string(), pages, 1)));
  bench.apply(cmd::answered());
  REQUIRE(wait_until(bench, [&] { return bench.sheet_saving()->outcome.has_value(); }));
  REQUIRE_FALSE(bench.notices().empty());
  CHECK(bench.notices().back().text.find("was not written") != std::string::npos);
}
