// Dials of a machine: what is dialled, what that gives, and the plan that is laid with it. Expected values are worked out by hand
// beside each.
#include <cmath>

#include <catch2/catch.hpp>

#include "base/random.h"
#include "plan/dial.h"
#include "plan/dial_text.h"
#include "plan/dialling.h"
#include "plan/flatten.h"
#include "plan/plan_file.h"
#include "plan/plan_values.h"
#include "plan/plan_writer.h"
#include "plan/revision.h"
#include "plan/sample_plan.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// The sample of every key, but continuous, so that nothing is warned of.
const std::string machine = R"(
[machine.dials.pitch]
unit = "teeth"
per_unit = "0.0125 mm"
step = 1
least = 10
greatest = 60

[machine.dials.left_stop]
unit = "mm"
per_unit = "1 mm"
at_zero = "-12.4 mm"
step = 0.05

[machine.dials.right_stop]
unit = "mm"
from = "left flange"
per_unit = "1 mm"
at_zero = "-12.4 mm"
step = 0.05

[machine.dials.tension]
unit = "A"
points = [[0.1, "0.7 N"], [0.2, "1.7 N"], [0.3, "3.2 N"]]
diameter = "60 mm"
step = 0.01

[machine.dials.line_speed]
unit = "%"
per_unit = "1.3 m/min"
step = 1

[machine.counter]
unit = "m"
wheel_circumference = "200 mm"
counts_per_turn = 0.2
error = "0.5 %"
step = 0.1
)";

std::string text_with(const std::string& dials) { return std::string(sample::full) + dials; }

Plan sound(const std::string& text) {
  const Result<Plan> plan = plan_from_text(text, "a.lay.toml");
  for (const Issue& issue : plan.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

std::string trouble(const std::string& dials) {
  const Result<Plan> plan = plan_from_text(text_with(dials), "a.lay.toml");
  REQUIRE_FALSE(plan.ok());
  return to_text(plan.issues().front());
}

const DialledSetting& setting(const Plan& plan, const std::string& path) {
  const DialledSetting* found = dialled_at(plan, path);
  INFO(path);
  REQUIRE(found != nullptr);
  return *found;
}

Dial drawn_dial(Random& random) {
  const auto between = [&](double low, double high) { return low + (high - low) * random.uniform(); };
  Dial dial;
  dial.unit = "div";
  const int kind = static_cast<int>(between(0.0, 3.0));
  if (kind == 2) {
    double reading = between(-5.0, 5.0), value = between(-2.0, 2.0);
    const double sign = random.uniform() < 0.5 ? -1.0 : 1.0;
    for (int i = 0; i < 6; ++i) {
      dial.points.push_back({reading, value});
      reading += between(2.0, 5.0);
      value += sign * between(0.05, 1.0);
    }
  } else {
    dial.law = kind == 1 ? DialLaw::inverse : DialLaw::proportional;
    dial.at_zero = between(-3.0, 3.0);
    dial.per_unit = between(0.001, 0.3) * (random.uniform() < 0.5 ? -1.0 : 1.0);
  }
  if (random.uniform() < 0.8) dial.step = between(0.01, 1.5);
  return dial;
}

}  // namespace

TEST_CASE("a value becomes what its dial can be set to, and the plan keeps what was asked") {
  const Plan plan = sound(text_with(machine));
  // 0.26 mm is 20.8 teeth of 0.0125 mm: 21 of them are 0.2625 mm.
  const DialledSetting& pitch = setting(plan, "traverse.pitch");
  CHECK(pitch.reading == 21.0);
  CHECK(pitch.asked == 0.26);
  CHECK(pitch.laid == Approx(0.2625).epsilon(1e-12));
  CHECK(pitch.moved());
  CHECK(pitch.unit == "teeth");
  CHECK(plan.traverse().pitch_mm == pitch.laid);
  CHECK(plan.asked().traverse.pitch_mm == 0.26);
  // 0.13 mm lies at 12.53 on the scale; 12.55 is 0.15 mm. The right stop, 0.14 mm from the right face, lies 94.86 mm from the
  // left one of a spool of 95 mm: 107.26; 107.25 is 94.85 mm, and so 0.15 mm from the right face.
  CHECK(setting(plan, "traverse.left_stop").reading == Approx(12.55));
  CHECK(plan.traverse().left_stop_mm == Approx(0.15).margin(1e-9));
  CHECK(setting(plan, "traverse.right_stop").reading == Approx(107.25));
  CHECK(plan.traverse().right_stop_mm == Approx(0.15).margin(1e-9));
  // The empty barrel's first turn lies on 150.245 mm: 0.5 N there are 1.252042 N on 60 mm, a little more than half way from
  // 0.1 A to 0.2 A: 0.1552042 A. 0.16 A give 1.3 N there and 1.3 x 60 / 150.245 N here.
  CHECK(setting(plan, "wind.tension").reading == Approx(0.16));
  CHECK(plan.wind().tension_N == Approx(1.3 * 60.0 / 150.245));
  // 60 m/min are 46.15 % of 130 m/min: 46 % are 59.8 m/min.
  CHECK(setting(plan, "wind.line_speed").reading == 46.0);
  CHECK(plan.wind().line_speed_mm_per_s == Approx(59.8e3 / 60.0));
  // Steps of the wind are dialled, too: 0.27 mm is 21.6 teeth.
  CHECK(setting(plan, "wind.step[0].pitch").reading == 22.0);
  CHECK(plan.wind().steps[0].pitch_mm == Approx(0.275));
  CHECK(dialled_at(plan, "wind.step[1].left_stop") == nullptr);
  CHECK(dialled_at(plan, "traverse.reversal.turns") == nullptr);  // it has no dial
}

TEST_CASE("a plan with the dialled values written in is the same plan") {
  const Plan plan = sound(text_with(machine));
  const Plan again = sound(write_plan(plan.draft()));
  CHECK(same_plan(again.draft(), plan.draft()));
  CHECK(same_plan(again.asked(), plan.draft()));
  for (const DialledSetting& each : again.dialled()) CHECK_FALSE(each.moved());
  CHECK(revision_of(again.draft()) == revision_of(plan.draft()));
  // Without the machine it is laid alike, but is another plan: its sheet has no readings.
  PlanDraft bare = plan.draft();
  bare.machine = {};
  CHECK(revision_of(bare) != revision_of(plan.draft()));
  CHECK(without_dials(plan.draft()).machine.dials.empty());
}

// Readings go by steps, so a value moves by what half a step is worth there, and no more.
TEST_CASE("no dial moves a value by more than half a step, and a dialled value stays") {
  Random random(20240611);
  int rounded = 0, beyond = 0;
  for (int i = 0; i < 20'000; ++i) {
    const Dial dial = drawn_dial(random);
    const double value = -4.0 + 8.0 * random.uniform();
    const DialAnswer answer = set_dial(dial, value);
    if (answer.reach != DialReach::settable) {
      ++beyond;
      continue;
    }
    INFO("draw " << i << ", value " << value);
    const double exact = *reading_at_value(dial, value), set = answer.setting.reading;
    const bool at_end =
        !dial.points.empty() && dial.step &&
        (set < dial.points.front().reading + *dial.step || set > dial.points.back().reading - *dial.step);
    const double most = dial.step ? (at_end ? 1.0 : 0.5) * *dial.step : 0.0;
    REQUIRE(std::abs(set - exact) <= most + 1e-6 * std::max(1.0, std::abs(exact)));
    if (dial.step) REQUIRE(std::abs(std::remainder(set, *dial.step)) < 1e-6 * *dial.step + 1e-8);
    REQUIRE(std::abs(value_at_reading(dial, set) - answer.setting.value) <= 1e-6 * std::max(1.0, std::abs(value)));
    const DialAnswer again = set_dial(dial, answer.setting.value);
    REQUIRE(again.reach == DialReach::settable);
    REQUIRE(again.setting.value == answer.setting.value);
    REQUIRE(again.setting.reading == Approx(set).epsilon(1e-6).margin(1e-6));
    if (answer.setting.value != value) ++rounded;
  }
  CHECK(rounded > 5'000);
  CHECK(beyond > 100);
}

TEST_CASE("turns per inch are dialled by the inverse law") {
  Dial dial;
  dial.law = DialLaw::inverse;
  dial.per_unit = 25.4;
  dial.step = 1.0;
  // 0.26 mm: 97.69 turns per inch.
  CHECK(set_dial(dial, 0.26).setting.reading == 98.0);
  CHECK(set_dial(dial, 0.26).setting.value == Approx(25.4 / 98.0).epsilon(1e-8));
  CHECK(set_dial(dial, 1000.0).reach == DialReach::out_of_reach);  // less than a turn: reading 0 has no value
}

TEST_CASE("what a dial does not reach is refused, what was not measured is warned of") {
  const std::string far = sample::with("pitch = \"0.26 mm\"", "pitch = \"0.8 mm\"", text_with(machine));
  const Result<Plan> coarse = plan_from_text(far, "a.lay.toml");
  REQUIRE_FALSE(coarse.ok());
  CHECK_THAT(to_text(coarse.issues().front()),
             Contains("traverse.pitch") && Contains("cannot be set on the machine") &&
                 Contains("[machine.dials.pitch]") && Contains("0.125 mm to 0.75 mm"));
  const std::string hard = sample::with("tension = \"0.5 N\"", "tension = \"2 N\"", text_with(machine));
  const Plan plan = sound(hard);
  CHECK_FALSE(setting(plan, "wind.tension").reading);
  CHECK(plan.wind().tension_N == 2.0);
  const Result<Plan> told = plan_from_text(hard, "a.lay.toml");
  REQUIRE(told.issues().size() == 1);
  // 3.2 N on 60 mm are 1.27791 N on 150.245 mm, 0.7 N are 0.279543 N.
  CHECK_THAT(to_text(told.issues().front()),
             Contains("beyond what was measured") && Contains("0.279543 N to 1.27791 N"));
}

TEST_CASE("where rounding makes a plan unsound, that is said") {
  // Half a tooth would be no pitch at all: 0.26 mm of a gear of 1 mm per tooth.
  const std::string coarse = "[machine.dials.pitch]\nunit = \"teeth\"\nper_unit = \"1 mm\"\nstep = 1\n";
  const std::string text = trouble(coarse);
  CHECK_THAT(text, Contains("traverse.pitch") && Contains("dial gives at 0 teeth"));
}

TEST_CASE("a table of a dial or counter that is wrong is told") {
  const std::string head = "[machine.dials.pitch]\nunit = \"div\"\n";
  CHECK_THAT(trouble(head + "per_unti = \"1 mm\"\n"), Contains("did you mean per_unit?"));
  CHECK_THAT(trouble(head), Contains("give per_unit, or measured points"));
  CHECK_THAT(trouble(head + "per_unit = \"0 mm\"\n"), Contains("would set no value"));
  CHECK_THAT(trouble(head + "per_unit = 1\n"), Contains("has no unit"));
  CHECK_THAT(trouble(head + "per_unit = \"1 N\"\n"), Contains("length"));
  CHECK_THAT(trouble(head + "per_unit = \"1 mm\"\nleast = 5\ngreatest = 5\n"), Contains("not above the least"));
  CHECK_THAT(trouble(head + "per_unit = \"1 mm\"\nstep = 0\n"), Contains("out of range"));
  CHECK_THAT(trouble(head + "per_unit = \"1 mm\"\npoints = [[1, \"1 mm\"], [2, \"2 mm\"]]\n"),
             Contains("in place of"));
  CHECK_THAT(trouble(head + "points = [[1, \"1 mm\"]]\n"), Contains("two or more pairs"));
  CHECK_THAT(trouble(head + "points = [[2, \"1 mm\"], [2, \"2 mm\"]]\n"), Contains("rising order"));
  CHECK_THAT(trouble(head + "points = [[1, \"1 mm\"], [2, \"3 mm\"], [3, \"2 mm\"]]\n"), Contains("turns back"));
  CHECK_THAT(trouble(head + "per_unit = \"1 mm\"\ndiameter = \"60 mm\"\n"), Contains("not a key"));
  CHECK_THAT(trouble("[machine.dials.pitch]\nper_unit = \"1 mm\"\n"), Contains("give unit"));
  CHECK_THAT(trouble("[machine.dials.pich]\nunit = \"div\"\n"), Contains("did you mean pitch?"));
  CHECK_THAT(trouble("[machine.counter]\nunit = \"m\"\n"), Contains("wheel_circumference"));
  CHECK_THAT(trouble("[machine]\ncountre = 3\n"), Contains("did you mean counter?"));
}

TEST_CASE("dials are written, saved over, flattened and read back as the same") {
  const Plan plan = sound(text_with(machine));
  CHECK(sound(write_plan(plan.asked())).draft().machine == plan.draft().machine);
  // Saved over: the tables stay as they stand.
  PlanDraft changed = plan.asked();
  changed.traverse.pitch_mm = 0.3;
  const std::string saved = write_plan(text_with(machine), plan.asked(), changed);
  CHECK_THAT(saved, Contains("points = [[0.1, \"0.7 N\"], [0.2, \"1.7 N\"], [0.3, \"3.2 N\"]]"));
  CHECK(sound(saved).draft().machine == plan.draft().machine);

  // From an entry: what the plan has itself stands in place of the entry's.
  NamedEntry entry{EntryKind::machine, "W", "shop.toml", 3, {}};
  entry.dials = plan.draft().machine;
  PlanDraft holder;
  holder.entries.push_back(entry);
  const EntriesOf entries(holder);
  const std::string own =
      "[machine]\nname = \"W\"\n[machine.dials.pitch]\nunit = \"div\"\nper_unit = \"0.02 mm\"\nstep = 1\n";
  const Result<Plan> named = plan_from_text(text_with(own), "a.lay.toml", &entries);
  REQUIRE(named.ok());
  CHECK(setting(named.value(), "traverse.pitch").unit == "div");
  CHECK(setting(named.value(), "traverse.left_stop").reading == Approx(12.55));
  CHECK(named.value().draft().machine.counter == plan.draft().machine.counter);
  const Plan alone = sound(flattened(text_with(own), named.value().asked()));
  CHECK(alone.draft().entries.empty());
  CHECK(alone.draft().machine == named.value().draft().machine);
  CHECK(revision_of(alone.draft()) == revision_of(named.value().draft()));

  // Of a machine in braces.
  std::string inline_text(sample::full);
  inline_text.replace(inline_text.find("[spool]"), 0, "machine = { name = \"W\" }\n");
  const Result<Plan> in_braces = plan_from_text(inline_text, "a.lay.toml", &entries);
  REQUIRE(in_braces.ok());
  CHECK(sound(flattened(inline_text, in_braces.value().asked())).draft().machine ==
        in_braces.value().draft().machine);
}

TEST_CASE("a counter tells what it shows, its error included") {
  const Counter counter = *sound(text_with(machine)).draft().machine.counter;
  // A turn of the wheel is 0.2 m and shows 0.2 m: one count is a metre. It shows half a percent more than that: 3015 m.
  const CounterReading shown = counter_reading(counter, 3'000'000.0);
  CHECK(shown.reading == Approx(3015.0).epsilon(1e-12));
  CHECK(shown.length_mm == Approx(3'000'000.0).epsilon(1e-12));
  // To a tenth of its unit: 1005.05025 m are 1010.0755 of its metres.
  CHECK(counter_reading(counter, 1'005'050.25).reading == Approx(1010.1));
  CHECK(counter_reading(counter, 1'005'050.25).length_mm == Approx(1010.1 / 1.005 * 1000.0));
}
