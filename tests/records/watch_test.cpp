// What was planned beside what was measured, and machines over time.
#include <catch2/catch.hpp>

#include "lay/lay.h"
#include "order/reel_plan.h"
#include "plan/plan_file.h"
#include "plan/revision.h"
#include "records/beside_plan.h"
#include "records/control_chart.h"
#include "records/planned.h"
#include "records/sample_record.h"
#include "records/trends.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

TEST_CASE("a record holds what the build gives, layer by layer") {
  const Plan plan = plan_from_text(reel, "reel.lay.toml").value();
  Progress progress;
  const LaySettings settings{3, 0.25};
  const Build build = lay(plan, settings, progress).value();
  const Measurements measurements = measure(plan, build, progress);
  const SpoolRecord record = planned_record(plan, reel, settings, build, measurements);
  CHECK(record.plan_text == reel);
  CHECK(record.revision == revision_of(plan.draft()));
  CHECK(record.seed == "3");
  CHECK(record.inside_width_mm == 20.5);
  CHECK(record.title == "Reel");
  REQUIRE(record.planned.size() == measurements.layers.size());
  double turns = 0.0;
  for (std::size_t i = 0; i < record.planned.size(); ++i) {
    const PlannedLayer& each = record.planned[i];
    turns += each.layer_turns;
    CHECK(each.turns == Approx(turns));
    CHECK(each.at_end == (i + 1 == record.planned.size()));
    CHECK(each.outer_diameter_mm == measurements.layers[i].outer_diameter_mm);
  }
  CHECK(turns == Approx(100.0));
  CHECK(record.planned.back().length_mm == Approx(build.length_mm));
  // The guide goes from 0.5 mm to 0.5 mm off the flanges; the fiber lies a diameter of 1 mm wide there, and the first turns lag
  // less than a pitch behind.
  CHECK(record.planned.front().width_mm == Approx(20.5 - 2 * 0.5 + 1.0).margin(0.6));
  CHECK(record.planned.front().outer_diameter_mm[1] == Approx(102.0).margin(0.05));
}

TEST_CASE("readings stand beside what was planned there") {
  SpoolRecord record = sample_record();
  Reading first = reading_of(1, 102.5, 102.25, 102.0), end, between;
  first.layer_turns = 19.0;
  first.width_mm = 20.0;
  end.at_end = true;
  end.counter_turns = 41.0;
  end.diameter_mm[1] = 103.6;
  between.counter_turns = 30.0;
  between.diameter_mm[1] = 103.0;
  record.entries[0].readings = {end, between, first};
  const std::vector<BesidePlan> all = readings_beside_plan(record);
  REQUIRE(all.size() == 8);
  CHECK(all[0].place == "layer 1");
  CHECK(all[0].quantity == ReadQuantity::layer_turns);
  CHECK(all[0].planned == 19.5);
  CHECK(all[1].planned == 102.0);
  CHECK(all[4].quantity == ReadQuantity::width);
  CHECK(all[4].planned == 20.4);
  CHECK(all[5].place == "at 30 turns");
  CHECK_FALSE(all[5].planned.has_value());
  CHECK(all[6].place == "end");
  CHECK(all[6].planned == 40.0);
  CHECK(*outermost_difference(record, ReadQuantity::diameter_middle) == Approx(-0.1));
  CHECK(*outermost_difference(record, ReadQuantity::diameter_left) == Approx(0.5));
  CHECK_FALSE(outermost_difference(record, ReadQuantity::length).has_value());
}

TEST_CASE("limits of a control chart follow from the moving range") {
  // By hand: mean 12; moving ranges 2, 3, 1 and 5, 2.75 on average.
  const ControlChart chart = control_chart({10.0, 12.0, 15.0, 14.0, 9.0});
  CHECK(chart.mean == Approx(12.0));
  CHECK(chart.mean_range == Approx(2.75));
  CHECK(chart.upper == Approx(12.0 + 2.66 * 2.75));
  CHECK(chart.lower == Approx(12.0 - 2.66 * 2.75));
  CHECK(chart.range_limit == Approx(3.267 * 2.75));
  CHECK(chart.in_control());
  CHECK(control_chart({}).points.empty());
  CHECK(control_chart({0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1}).in_control());
}

TEST_CASE("what is out of control is found, each by its rule") {
  // Ten values that alternate by 1 about 0, then one of 10: mean range (9 + 10.5) / 10 = 1.95, limit 0.909 + 5.187.
  std::vector<double> values;
  for (int i = 0; i < 10; ++i) values.push_back(i % 2 == 0 ? -0.5 : 0.5);
  values.push_back(10.0);
  ControlChart chart = control_chart(values);
  CHECK(chart.points.back().beyond);
  CHECK(chart.points.back().range_beyond);
  CHECK_FALSE(chart.points[9].beyond);
  // Seven on one side are none yet, eight are.
  for (const int high : {7, 8}) {
    values.clear();
    for (int i = 0; i < 8; ++i) values.push_back(i % 2 == 0 ? -1.0 : -0.9);
    for (int i = 0; i < high; ++i) values.push_back(i % 2 == 0 ? 1.0 : 0.9);
    values.insert(values.begin(), 0.5);  // so that the low ones are eight, too
    chart = control_chart(values);
    CHECK(chart.points[8].run);
    CHECK(chart.points.back().run == (high == 8));
  }
}

TEST_CASE("trends are of each machine over time, and say in words what is out of control") {
  std::vector<SpoolRecord> records;
  for (int i = 0; i < 12; ++i) {
    SpoolRecord record = sample_record("S" + std::to_string(i));
    record.number = 12 - i;  // the last one was recorded first
    record.machine = i == 11 ? "other" : "winder";
    record.date = "2026-11-" + std::to_string(10 + i);
    const double off = i == 10 ? 5.0 : i % 2 == 0 ? 0.1 : -0.1;
    Reading end;
    end.at_end = true;
    end.diameter_mm[1] = 103.7 + off;
    record.entries[0].readings = {end};
    if (i < 3) record.entries[0].fitted = {{"traverse.left_stop", 0.5, 0.5 + 0.1 * i, 0.01, i != 2}};
    records.push_back(record);
  }
  const Trends trends = trends_of(records, {});
  REQUIRE(trends.all.size() == 3);
  CHECK(trends.all[0].machine == "other");
  const Trend& diameters = trends.all[1];
  CHECK(diameters.machine == "winder");
  CHECK(diameters.quantity.name == "diameter_middle");
  REQUIRE(diameters.spools.size() == 11);
  CHECK(diameters.spools.front().spool == "S0");
  CHECK(diameters.chart.points.front().value == Approx(0.1));
  const std::vector<std::string> said = out_of_control(diameters);
  // The last one draws the mean so far off that all ten before it lie on one side.
  REQUIRE(said.size() == 3);
  CHECK_THAT(said[0],
             Contains("spool S0") && Contains("to spool S9") && Contains("10 in a row") && Contains("lower"));
  CHECK_THAT(said[1], Contains("spool S10") && Contains("over the limit"));
  CHECK_THAT(said[2], Contains("jump"));
  CHECK(trends.all[2].quantity.name == "left_stop");
  CHECK(trends.all[2].spools.size() == 2);  // what the readings did not tell is left out
  CHECK(trends.not_fitted.size() == 9);
  CHECK(trends_of(records, {"left_stop"}).all.size() == 1);
}

TEST_CASE("days, kinds of pictures, and texts are held to what they are") {
  CHECK(is_date("2024-02-29"));
  for (const char* wrong : {"2026-02-29", "2026-13-01", "26-01-01", "2026-1-01", "2026-01-01 ", "+026-01-01", ""}) {
    CAPTURE(wrong);
    CHECK_FALSE(is_date(wrong));
  }
  CHECK(picture_of(png_bytes(), "", "a").value().kind == "png");
  CHECK(picture_of("\xff\xd8\xff\xe0", "", "a").value().kind == "jpeg");
  CHECK(picture_of("RIFF1234WEBPVP8 ", "", "a").value().kind == "webp");
  CHECK_THAT(to_text(picture_of("GIF89a", "", "a.gif").issues().front()),
             Contains("a.gif") && Contains("PNG, JPEG or WebP"));
  CHECK_THAT(to_text(picture_of(png_bytes(largest_picture_bytes + 1), "", "a").issues().front()), Contains("16 MB"));
  RecordEntry entry = sample_entry();
  CHECK(check_entry(entry).empty());
  entry.by = "two\nlines";
  CHECK(has_error(check_entry(entry)));
  entry.by = "\xff";
  CHECK(has_error(check_entry(entry)));
  SpoolRecord record = sample_record();
  CHECK(check_record(record).empty());
  record.spool.clear();
  CHECK(has_error(check_record(record)));
  record.spool = std::string(61, 'x');
  CHECK(has_error(check_record(record)));
}
