// What is dialled: the build is that of the dialled values, and text, document and sheet say the same of it.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "figures/calibration_text.h"
#include "figures/dial_words.h"
#include "figures/json.h"
#include "figures/summary.h"
#include "lay/lay.h"
#include "paper/cairo_sink.h"
#include "paper/paper_text.h"
#include "paper/setup_sheet.h"
#include "plan/dialling.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// The sample, but 400 m of it, with a step of the wind.
std::string short_text() {
  std::string text = read_plan_text(LAYWRIGHT_SOURCE_DIR "/samples/dialled.lay.toml").value();
  const std::string length = "length = \"1 km\"";
  text.replace(text.find(length), length.size(), "length = \"400 m\"");
  const std::string behind = "[takeup]";
  return text.replace(text.find(behind), behind.size(),
                      "[[wind.step]]\nfrom_layer = 2\npitch = \"0.26 mm\"\n\n[takeup]");
}

Plan dialled(const std::string& text) {
  const Result<Plan> plan = plan_from_text(text, "dialled.lay.toml");
  for (const Issue& issue : plan.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

Build laid(const Plan& plan) {
  Progress progress;
  LaySettings settings;
  settings.fidelity = 0.1;
  Result<Build> build = lay(plan, settings, progress);
  REQUIRE(build.ok());
  return std::move(build).value();
}

struct Told {
  Plan plan;
  nlohmann::json document;
  std::string text, sheet, checkpoints;
  TakeupRun run;
};

Told told_of(const Plan& plan) {
  Progress progress;
  const Build build = laid(plan);
  const Measurements measurements = measure(plan, build, progress);
  TakeupRun run = take_up(plan, build, measurements, progress);
  const std::string pdf = to_pdf(draw_setup_sheet({plan, build, measurements, run, Paper::a4, {}}));
  return {plan,
          nlohmann::json::parse(to_json(plan, build, measurements, run)),
          summary_text(plan, build, measurements, run, {}),
          single_spaced(text_of(pdf, 1)),
          single_spaced(text_of(pdf, 2)),
          run};
}

}  // namespace

TEST_CASE("a build is that of a plan in which the dialled values are written") {
  const Plan plan = dialled(short_text());
  CHECK(plan.traverse().pitch_mm != plan.asked().traverse.pitch_mm);
  PlanDraft written = plan.draft();
  written.machine = {};
  const Plan by_hand = dialled(write_plan(written));
  CHECK(by_hand.dialled().empty());
  const std::uint64_t hash = laid(plan).hash();
  CHECK(laid(by_hand).hash() == hash);
  // And not that of what was asked.
  PlanDraft asked = plan.asked();
  asked.machine = {};
  CHECK(laid(dialled(write_plan(asked))).hash() != hash);
}

TEST_CASE("text, document and sheet tell the same of what is dialled") {
  const Told told = told_of(dialled(short_text()));
  // 0.255 mm are 40.8 teeth of 0.00625 mm: 41 of them give 0.25625 mm; from layer 2 on 0.26 mm, 41.6 teeth, and so 42.
  CHECK_THAT(told.text, Contains("pitch") && Contains("41 teeth") && Contains("= 0.25625 mm, asked 0.255 mm"));
  CHECK_THAT(told.text,
             Contains("pitch from layer 2") && Contains("42 teeth") && Contains("= 0.2625 mm, asked 0.26 mm"));
  CHECK_THAT(told.text, Contains("pitch 0.25625 mm"));  // as it is laid
  CHECK_THAT(told.sheet, Contains("41 teeth = 0.25625 mm"));
  CHECK_THAT(told.sheet, Contains("42 teeth = 0.2625 mm"));
  CHECK_THAT(told.sheet, Contains("46 % = 59.8 m/min, asked 60 m/min"));
  CHECK_THAT(told.sheet, Contains("7 Hz = 199.5 rpm"));
  const auto& dialled = told.document.at("dialled");
  REQUIRE(dialled.size() == told.plan.dialled().size());
  for (std::size_t i = 0; i < dialled.size(); ++i) {
    const DialledSetting& each = told.plan.dialled()[i];
    const DialWords words = dial_words(told.plan)[i];
    INFO(each.path);
    CHECK(dialled[i].at("key") == each.path);
    CHECK(dialled[i].at("asked").get<double>() == each.asked);
    CHECK(dialled[i].at("laid").get<double>() == each.laid);
    CHECK(dialled[i].at("reading").get<double>() == each.reading);
    CHECK(dialled[i].at("rounded") == each.moved());
    CHECK_THAT(told.text, Contains(words.reading));
    CHECK_THAT(told.sheet, Contains(words.reading));
  }
  CHECK(dialled[0].at("unit") == "mm");
  CHECK(dialled[0].at("reading_unit") == "teeth");
  CHECK(told.document.at("takeup").at("settings").at("traverse").at("pitch").get<double>() ==
        told.plan.traverse().pitch_mm);
  for (const auto& each : dialled) {
    if (each.at("key") == "wind.line_speed") CHECK(each.at("unit") == "mm/s");
  }
}

// 59.8 m/min, half a second of reaction and four of ramp: the line runs on for 996.67 mm/s x 2.5 s = 2.4917 m. What is left of
// 400 m, 397.508 m, shows as 398.701 m on a counter that shows .3 % too much: 398.7 m of its own, and 397.507 m of fiber.
TEST_CASE("the counter is set to its own reading, ramp and error included") {
  const Told told = told_of(dialled(short_text()));
  const auto& counter = told.document.at("takeup").at("counter");
  CHECK(counter.at("lead_m").get<double>() == Approx(59.8 / 60.0 * 2.5).epsilon(1e-9));
  CHECK(counter.at("reading").get<double>() == Approx(398.7));
  CHECK(counter.at("reading_unit") == "m");
  CHECK(counter.at("reading_end_m").get<double>() == Approx(398.7 / 1.003 + 59.8 / 60.0 * 2.5).epsilon(1e-9));
  CHECK_THAT(told.sheet, Contains("Set the counter to 398.7 m"));
  CHECK_THAT(told.text, Contains("398.7 m, by its own reading, to end at 400.0 m"));
  for (const auto& each : told.document.at("takeup").at("checkpoints")) {
    const double shown = each.at("counter_reading").get<double>();
    CHECK(shown == Approx(1.003 * each.at("counter_m").get<double>()).margin(0.051));
  }
  CHECK_THAT(told.checkpoints, Contains("401.2 m"));  // at the end, 400 m
}

// The clutch at the empty barrel is at what is dialled; its torque stays, and so does its current.
TEST_CASE("a measured clutch gives the current") {
  const Told told = told_of(dialled(short_text()));
  const DialledSetting& tension = *dialled_at(told.plan, "wind.tension");
  REQUIRE(tension.reading);
  CHECK(told.run.curves.current_A.front() == Approx(*tension.reading).epsilon(1e-6));
  CHECK(told.run.curves.current_A.back() == Approx(*tension.reading).epsilon(1e-6));
  CHECK_THAT(told.sheet, Contains("Clutch current, empty 0.160 A"));

  // With constant tension the torque grows with the wind, beyond what was measured: nothing is guessed.
  std::string text = short_text();
  const std::string control = "control = \"constant torque\"", points = ", [0.2, \"1.7 N\"], [0.25, \"2.31 N\"]]";
  text.replace(text.find(control), control.size(), "control = \"constant tension\"");
  const std::string pull = "tension = \"0.5 N\"";
  text.replace(text.find(pull), pull.size(), "tension = \"0.462 N\"");
  text.replace(text.find(points), points.size(), "]");
  const Told beyond = told_of(dialled(text));
  CHECK(beyond.run.curves.current_A.empty());
  CHECK_THAT(beyond.text, Contains("The clutch was measured from 0.310 N to 1.16 N on 60.0 mm"));
}

TEST_CASE("a calibration is the closed form, and what it prints is a dial") {
  // Two points: the line through them.
  const Calibration two = calibrate({{30.0, 0.19}, {60.0, 0.37}}, DialLaw::proportional).value();
  CHECK(two.per_unit == Approx(0.006).epsilon(1e-12));
  CHECK(two.at_zero == Approx(0.01).epsilon(1e-9));
  CHECK(two.greatest_off == Approx(0.0).margin(1e-12));
  // Three, evenly apart: slope (y3 - y1) / (x3 - x1), through the mean; the middle is off by two thirds of its bow.
  const std::vector<DialPoint> points{{10.0, 1.0}, {20.0, 2.3}, {30.0, 3.0}};
  const Calibration three = calibrate(points, DialLaw::proportional).value();
  CHECK(three.per_unit == Approx(0.1));
  CHECK(three.at_zero == Approx(2.1 - 0.1 * 20.0));
  CHECK(three.off[1] == Approx(0.3 * 2.0 / 3.0));
  CHECK(three.greatest_off == Approx(0.2));
  // The inverse law: a line over one by the reading.
  const Calibration inverse = calibrate({{50.0, 0.508}, {100.0, 0.254}}, DialLaw::inverse).value();
  CHECK(inverse.per_unit == Approx(25.4));
  CHECK(inverse.at_zero == Approx(0.0).margin(1e-12));
  CHECK_FALSE(calibrate({{30.0, 0.19}}, DialLaw::proportional).ok());
  CHECK_FALSE(calibrate({{30.0, 0.19}, {30.0, 0.2}}, DialLaw::proportional).ok());
  CHECK_FALSE(calibrate({{30.0, 0.19}, {40.0, 0.19}}, DialLaw::proportional).ok());
  CHECK_FALSE(calibrate({{0.0, 0.19}, {40.0, 0.2}}, DialLaw::inverse).ok());

  CalibrationRequest request{"pitch", points, find_unit("mm"), false, {}};
  request.given.unit = "div";
  request.given.step = 1.0;
  const std::string text = calibration_text(request, three);
  CHECK_THAT(text,
             Contains("The line misses the readings by 0.2 mm at most, more than a step of the dial (0.1 mm)"));
  CHECK_THAT(
      text,
      Contains("\n[machine.dials.pitch]\nunit = \"div\"\nper_unit = \"0.1 mm\"\nat_zero = \"0.1 mm\"\nstep = 1\n"));
  request.as_measured = true;
  CHECK_THAT(calibration_text(request, three),
             Contains("points = [[10, \"1 mm\"], [20, \"2.3 mm\"], [30, \"3 mm\"]]"));
}
