// Ranges and cross checks. The rules are the program's own; each is met here from both sides.
#include <cmath>
#include <limits>

#include "plan/fields.h"
#include "plan/size_estimate.h"
#include "sample_plan.h"

using namespace laywright;

namespace {

// The one issue that a change to the sample's text brings.
Issue spoilt(std::string_view piece, std::string_view replacement) {
  const Issue issue = sample::only_issue(sample::with(piece, replacement));
  CHECK(issue.line > 0);
  return issue;
}

void error_at(const std::string& key, std::string_view piece, std::string_view replacement, std::string_view says) {
  const Issue issue = spoilt(piece, replacement);
  INFO(to_text(issue));
  CHECK(issue.severity == Severity::error);
  CHECK(issue.key == key);
  CHECK(to_text(issue).find(says) != std::string::npos);
}

void warning_at(const std::string& key, std::string_view piece, std::string_view replacement,
                std::string_view says) {
  const Issue issue = spoilt(piece, replacement);
  INFO(to_text(issue));
  CHECK(issue.severity == Severity::warning);
  CHECK(issue.key == key);
  CHECK(issue.what.find(says) != std::string::npos);
  CHECK(plan_from_text(sample::with(piece, replacement), "a.lay.toml").ok());
}

void sound(std::string_view piece, std::string_view replacement) {
  INFO(replacement << "\n" << sample::all_text(sample::issues_in(sample::with(piece, replacement))));
  CHECK(sample::issues_in(sample::with(piece, replacement)).empty());
}

}  // namespace

TEST_CASE("spool: flange against barrel, tapers, runout") {
  error_at("spool.flange_diameter", "\"236 mm\"", "\"150 mm\"", "larger than the barrel, 150 mm");
  error_at("spool.flange_diameter", "\"236 mm\"", "\"5 in\"", "larger than the barrel");
  const Issue thin = sample::issues_in(sample::with("\"236 mm\"", "\"150.4 mm\"")).at(0);
  CHECK(thin.what.find("by even one fiber, 0.245 mm") != std::string::npos);
  CHECK(thin.allowed == "at least 150.49 mm");
  error_at("spool.barrel_taper", "\"0.2 mm\"", "\"-150 mm\"", "nothing is left of the barrel");
  error_at("spool.barrel_taper", "\"0.2 mm\"", "\"86 mm\"", "as large as the flange");
  sound("\"0.2 mm\"", "\"-50 mm\"");
  // A lean of one in five, 236 mm / 5; less where the faces, which may both lean inward at the same place, meet.
  error_at("spool.flange_runout", "\"0.1 mm\"", "\"47.3 mm\"", "up to 47.2 mm");
  sound("flange_runout = \"0.1 mm\"", "flange_runout = \"47.2 mm\"");
}

TEST_CASE("fiber: in the spool, its parts, its limits") {
  error_at("fiber.diameter_tolerance", "\"0.005 mm\"", "\"0.2 mm\"",
           "less than half of the fiber diameter, 0.245 mm");
  error_at("fiber.diameter_scatter", "\"2 um\"", "\"7.4 um\"", "no more than 3 % of the fiber diameter, 0.245 mm");
  sound("\"2 um\"", "\"7.3 um\"");
  error_at("fiber.core_diameter", "\"0.125 mm\"", "\"0.25 mm\"", "wider than the whole fiber, 0.245 mm");
  error_at("fiber.min_bend_diameter", "\"60 mm\"", "\"151 mm\"", "the barrel, 150 mm, bends the fiber tighter");
  sound("\"60 mm\"", "\"150 mm\"");
  error_at("wind.tension", "\"8.4 N\"", "\"0.4 N\"", "more than the fiber bears (max_tension, 0.4 N)");
  error_at("wind.tension", "tension = \"0.5 N\"", "tension = \"2 lbf\"", "up to 1.8884 lbf");
  sound("\"8.4 N\"", "\"0.5 N\"");
  warning_at("fiber.modulus", "core_diameter = \"0.125 mm\"\n", "", "need core_diameter too");
  CHECK(sample::all_text(sample::issues_in(sample::with("diameter = \"0.245 mm\"", "diameter = \"96 mm\"")))
            .find("fiber.diameter = \"96 mm\": the fiber is wider than the spool inside, 95 mm") !=
        std::string::npos);
}

TEST_CASE("a spool more than 4000 fibers wide is refused") {
  PlanDraft draft = sample::draft_of();
  draft.fiber.diameter_mm = 0.02;
  draft.fiber.diameter_scatter_mm = 0.0;
  draft.fiber.diameter_tolerance_mm = 0.0;
  draft.fiber.core_diameter_mm = 0.01;
  draft.wind = Wind{};
  draft.wind.turns = 10.0;
  draft.spool.inside_width_mm = 80.0;
  CHECK(check(draft).ok());
  draft.spool.inside_width_mm = 80.1;
  const Issues issues = check(draft).issues();
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].key == "spool.inside_width");
  CHECK(issues[0].what.find("more than 4,000 times the fiber diameter, 0.02 mm") != std::string::npos);
}

TEST_CASE("traverse: stops, steps, reversals") {
  error_at("traverse.right_stop", "\"0.14 mm\"", "\"94.87 mm\"", "the stops cross");
  error_at("traverse.right_stop", "\"0.14 mm\"", "\"4 in\"", "they take up 101.73 mm, but the spool is 95 mm wide");
  sound("\"0.14 mm\"", "\"-0.14 mm\"");
  error_at("traverse.step_angle", "step_angle = \"45 deg\"\n", "", "must be given for a stepped traverse");
  error_at("traverse.step_angle", "\"45 deg\"", "\"361 deg\"", "0 deg to 360 deg");
  error_at("traverse.step_angle", "\"45 deg\"", "\"0 deg\"", "above 0 deg");
  sound("\"45 deg\"", "\"360 deg\"");
  CHECK(sample::issues_in(sample::with("\"45 deg\"", "\"0 deg\"", sample::with("\"stepped\"", "\"continuous\"")))
            .empty());
  warning_at("traverse.step_angle", "\"stepped\"", "\"continuous\"", "not used by a continuous");
  warning_at("traverse.reversal.turns", "\"dwell\"", "\"instant\"", "not used by an instant reversal");
  warning_at("traverse.reversal.kind", "turns = 0.5", "turns = 0", "the same as an instant reversal");
  error_at("traverse.reversal.kind", "\"dwell\"", "\"ramp\"", "a stepped traverse cannot ramp");
  error_at("traverse.reversal.lost_motion", "\"0.02 mm\"", "\"95 mm\"", "the guide never moves");
  error_at("traverse.reversal.stop_scatter", "\"0.03 mm\"", "\"9.5 mm\"", "less than 9.473 mm");
  error_at("traverse.guide_play", "\"0.01 mm\"", "\"95 mm\"", "larger than its stroke");
  error_at("traverse.pitch", "\"0.26 mm\"", "\"0 mm\"", "above 0 mm");
  warning_at("traverse.pitch", "\"0.26 mm\"", "\"100 mm\"", "coarser than the stroke, 94.73 mm");
}

TEST_CASE("ramps must fit into the stroke") {
  std::string text = sample::with("\"stepped\"", "\"continuous\"", sample::with("\"dwell\"", "\"ramp\""));
  text = sample::with("step_angle = \"45 deg\"\n", "", text);
  CHECK(sample::issues_in(text).empty());
  // The steps' stroke is 94.39 mm; at pitch 0.28, two ramps of n/2 turns at 0.14 mm a turn each fill it: 674.2.
  CHECK(sample::issues_in(sample::with("turns = 0.5", "turns = 674", text)).empty());
  const Issue step = sample::only_issue(sample::with("turns = 0.5", "turns = 675", text));
  CHECK(step.key == "traverse.reversal.turns");
  CHECK(step.allowed == "0 to 674.214");
  CHECK(step.what.find("longer than the stroke, 94.39 mm, at pitch 0.28 mm") != std::string::npos);
}

TEST_CASE("wind: exactly one end, in reach") {
  error_at("wind", "length = \"3 km\"\n", "", "give one of length, turns or diameter");
  error_at("wind", "length = \"3 km\"", "length = \"3 km\"\nturns = 5",
           "in more than one way: length 3 km and turns 5");
  error_at("wind", "length = \"3 km\"", "diameter = \"200 mm\"\nturns = 5", "in more than one way");
  sound("length = \"3 km\"", "turns = 100.5");
  sound("length = \"3 km\"", "diameter = \"200 mm\"");
  sound("length = \"3 km\"", "diameter = \"236 mm\"");
  error_at("wind.diameter", "length = \"3 km\"", "diameter = \"150.2 mm\"", "above 150.2 mm, up to 236 mm");
  error_at("wind.diameter", "length = \"3 km\"", "diameter = \"10 in\"", "above 5.91339 in, up to 9.29134 in");
  error_at("limits.rim_clearance", "rim_clearance = \"3 mm\"", "rim_clearance = \"43 mm\"", "less than 43 mm");
}

TEST_CASE("wind steps rise, change something, and keep the stops apart") {
  error_at("wind.step[1].from_layer", "from_layer = 20", "from_layer = 10", "begins at layer 10");
  error_at("wind.step[1].from_layer", "from_layer = 20", "from_layer = 5", "11 or more");
  error_at("wind.step[0].from_layer", "from_layer = 10", "from_layer = 0", "1 to 1000000");
  error_at("wind.step[0].right_stop", "\"0.31 mm\"", "\"95 mm\"", "the stops cross");
  warning_at("wind.step[1]", "pitch = \"0.28 mm\"\n", "", "changes nothing");
  warning_at("wind.step[1].pitch", "\"0.28 mm\"", "\"95 mm\"", "coarser than the stroke");
  // The second step moves one stop only; the other is the first step's.
  error_at("wind.step[1].left_stop", "pitch = \"0.28 mm\"", "left_stop = \"94.69 mm\"", "the stops cross");
  sound("pitch = \"0.28 mm\"", "left_stop = \"94.68 mm\"\npitch = \"0.005 mm\"");
}

TEST_CASE("take-up: what is not used or not enough is warned of") {
  warning_at("takeup.taper", "control = \"taper\"", "control = \"constant torque\"",
             "only with control = \"taper\"");
  warning_at("takeup.control", "taper = 0.3", "taper = 0", "the same as constant tension");
  warning_at("takeup.torque_at_full_current", "full_current = \"0.5 A\"\n", "", "full_current too");
  // 60 m/min on 150 mm: 1000 mm/s / (pi x 150 mm) = 127.3 rpm, 3.8197 fpm / in in other units.
  warning_at("takeup.speed_ceiling", "\"300 rpm\"", "\"127 rpm\"", "turns at 127.3 rpm at line speed 60 m/min");
  sound("\"300 rpm\"", "\"128 rpm\"");
  error_at("takeup.taper", "taper = 0.3", "taper = 1.01", "0 to 1");
}

TEST_CASE("a build too large for memory is refused, with the numbers that make it so") {
  // Four stations in a crossover of 1.8 sqrt(d / R), R halfway up 3 km of 0.245 mm at a fill of 0.8; coarse pitch: d / 8
  // of travel against the layer below, 16 p / d.
  PlanDraft draft = sample::draft_of();
  draft.wind.steps.clear();
  draft.traverse.pitch_mm = 0.26;
  const double outer = std::sqrt(75.0 * 75.0 + 3e6 * 0.245 * 0.245 / (4.0 * 0.8 * 95.0));
  const double crossover = 1.8 * std::sqrt(0.245 / (0.5 * (75.0 + outer)));
  CHECK(stations_estimate(draft) == Approx(8.0 * std::acos(-1.0) / crossover));
  draft.traverse.pitch_mm = 12.25;
  draft.traverse.step_angle_rad = std::acos(-1.0) / 2;
  CHECK(stations_estimate(draft) == Approx(3200.0));  // a step of a quarter turn
  draft.traverse.motion = Motion::continuous;
  CHECK(stations_estimate(draft) == Approx(800.0));
  draft = sample::draft_of();
  CHECK(turns_estimate(draft) == Approx(3e6 / (std::acos(-1.0) * 150.0)));
  // Never more than hexagonal packing puts on the spool: pi / sqrt(12) of its section.
  draft.wind.length_mm = 1e12;
  const double height = 43.0;
  const double width = 95.0 + height * std::tan(draft.spool.flange_taper_rad);
  const double turn = std::acos(-1.0) / 4 * 0.245 * 0.245;
  CHECK(turns_estimate(draft) == Approx(0.9068997 * height * width / turn).epsilon(1e-6));

  draft.fiber.diameter_mm = 0.05;
  draft.fiber.diameter_scatter_mm = 0.0;
  draft.fiber.core_diameter_mm = 0.03;
  draft.traverse.pitch_mm = 0.055;
  const Issues issues = check(draft).issues();
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].key == "wind.length");
  for (const char* part : {"GiB", "length 1000000 km", "barrel 150 mm", "fiber 0.05 mm", "pitch 0.055 mm"}) {
    INFO(issues[0].what);
    CHECK(issues[0].what.find(part) != std::string::npos);
  }
}

TEST_CASE("a pitch that would need too many stations is refused, however short the wind") {
  PlanDraft draft = sample::draft_of();
  draft.wind.length_mm.reset();
  draft.wind.turns = 1e-6;
  draft.traverse.step_angle_rad = 1e-9;
  const Issues issues = check(draft).issues();
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].key == "traverse.pitch");
  CHECK(issues[0].what.find("the fiber, 0.245 mm and the step angle, ") != std::string::npos);
}

TEST_CASE("no number that is not finite passes, in any field") {
  for (const auto& field : plan_fields()) {
    for (const double value : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                               -std::numeric_limits<double>::infinity()}) {
      if (field.kind == FieldKind::choice || (field.kind == FieldKind::friction && value > 0.0)) continue;
      PlanDraft draft = sample::draft_of();
      field.set(draft, value);
      const Result<Plan> checked = check(draft);
      INFO(field.path() << " = " << value << "\n" << sample::all_text(checked.issues()));
      REQUIRE_FALSE(checked.ok());
      CHECK(checked.issues()[0].key == field.path());
    }
  }
}

TEST_CASE("a draft that was changed since it was read is told by its new value") {
  PlanDraft draft = sample::draft_of(sample::with("\"236 mm\"", "\"9.3 in\""));
  draft.spool.flange_diameter_mm = 101.6;
  const Issues issues = check(draft).issues();
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].key == "spool.flange_diameter");
  CHECK(issues[0].value == "\"4 in\"");
  CHECK(issues[0].line == sample::line_of(sample::full, "flange_diameter"));
}

TEST_CASE("all issues come at once, in the order of their lines") {
  std::string text(sample::full);
  const std::pair<const char*, const char*> mistakes[] = {{"barrel_diameter = \"150 mm\"", "barrel_diameter = 150"},
                                                          {"\"95 mm\"", "\"95 N\""},
                                                          {"mass = \"0.9 kg\"", "mas = \"0.9 kg\""},
                                                          {"friction = 0.5", "friction = \"high\""},
                                                          {"\"72 GPa\"", "\"-72 GPa\""},
                                                          {"\"stepped\"", "\"steped\""},
                                                          {"\"0.26 mm\"", "\"0 mm\""},
                                                          {"\"dwell\"", "\"dwel\""},
                                                          {"\"3 km\"", "\"3 miles\""},
                                                          {"from_layer = 20", "from_layer = 10"},
                                                          {"taper = 0.3", "taper = 3"}};
  for (const auto& [piece, replacement] : mistakes) text = sample::with(piece, replacement, text);
  const Issues issues = sample::issues_in(text);
  INFO(sample::all_text(issues));
  REQUIRE(issues.size() == std::size(mistakes));
  for (std::size_t i = 1; i < issues.size(); ++i) CHECK(issues[i - 1].line < issues[i].line);
}
