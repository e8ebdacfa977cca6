#include "verdict/ribbon_advice.h"

#include <catch2/catch.hpp>

#include "pattern/crossed_plan.h"
#include "pattern/pattern_table.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

Measurements ribbon_in_layer(int layer, double size_d = 3.0) {
  Measurements measured;
  Finding finding;
  finding.kind = FindingKind::ribbon;
  finding.layer = layer;
  finding.size_d = size_d;
  measured.findings.push_back(finding);
  return measured;
}

}  // namespace

TEST_CASE("against a ribbon the verdict tells the safe pitch of laywright pattern") {
  // (300 - 1.1 * 0.9 / cos(angle)) / 15, as in the tests of patterns.
  const PlanDraft draft = whole_ratio_draft();
  CHECK(patterns(sound(draft), usual_gap_d).rows.at(0).safe.at(0).value_mm == 19.933);
  CHECK(against_ribbon(sound(draft), ribbon_in_layer(5)) ==
        "set a slightly different pitch, 19.933 mm (now 20 mm): 15.05 turns to each double stroke instead of 15.00");
}

TEST_CASE("a plan in inches is told the pitch in inches, as fine as its step") {
  PlanDraft draft = whole_ratio_draft();
  draft.origins["traverse.pitch"].written = "0.7874 in";
  // 19.933 mm / 25.4; a thousandth of a millimetre is .00004 in.
  CHECK_THAT(against_ribbon(sound(draft), ribbon_in_layer(1)), Contains("pitch, 0.784764 in (now 0.787402 in)"));
}

TEST_CASE("a ribbon of a later step is mended there") {
  PlanDraft draft = whole_ratio_draft();
  draft.traverse.pitch_mm = 19.85;
  draft.wind.steps = {{9, 20.0, {}, {}}, {21, 19.36, {}, {}}};
  const PatternTable table = patterns(sound(draft), usual_gap_d);
  const std::string ninth = against_ribbon(sound(draft), ribbon_in_layer(12));
  CHECK_THAT(ninth, Contains("different pitch from layer 9 on, 19.933 mm (now 20 mm)"));
  Measurements both = ribbon_in_layer(12, 2.0);
  both.findings.push_back(ribbon_in_layer(25, 4.0).findings.front());
  const double last = table.rows.at(2).safe.at(0).value_mm;
  const std::string highest = against_ribbon(sound(draft), both);
  CHECK_THAT(highest, Contains("from layer 21 on"));
  CHECK_THAT(highest, Contains(std::to_string(last).substr(0, 6)));
}

TEST_CASE("where a thousandth of a millimetre is too coarse for the pitch, a stop is told") {
  PlanDraft draft = whole_ratio_draft();
  draft.fiber.diameter_mm = 0.05;
  draft.traverse.pitch_mm = 0.15;  // 2000 turns: a thousandth moves the strand by 2 mm
  // Longer by half of 1.1 * 0.05 mm / cos(angle).
  CHECK(against_ribbon(sound(draft), ribbon_in_layer(1)) ==
        "set the right stop a little off, 4.972 mm (now 5 mm): 2,000.37 turns to each double stroke instead of "
        "2,000.00");
}

TEST_CASE("where no setting is known to be safe, what is to be reached is told") {
  const std::string expected =
      "set a slightly different pitch (now 1 mm), so that double strokes lie further from each other";
  CHECK(against_ribbon(sound(mini_spool()), ribbon_in_layer(1)) == expected);
}
