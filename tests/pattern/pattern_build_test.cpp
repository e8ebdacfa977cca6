// The patterns held against builds of the lay model.
#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <utility>
#include <vector>

#include "advise/narrow_plan.h"
#include "pattern/pattern_table.h"
#include "plan/plan_file.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// The sample with so many double strokes of its 15 turns.
PlanDraft sample(double double_strokes) {
  const Result<Plan> plan = load_plan(LAYWRIGHT_SOURCE_DIR "/samples/whole-ratio.lay.toml");
  REQUIRE(plan.ok());
  PlanDraft draft = plan.value().draft();
  draft.wind.turns = 15.0 * double_strokes;
  return draft;
}

Pattern only_pattern(const PlanDraft& draft) {
  const PatternTable table = patterns(sound(draft), usual_gap_d);
  REQUIRE(table.rows.size() == 1);
  return table.rows.front().pattern;
}

// How far ahead of the first stroke's strand the one of `next.starts` double strokes later lies, mm, at the same angles
// of the spool: over the middle of the width, away from the reversals, from the least to the greatest.
std::vector<double> measured_ahead(const PlanDraft& draft, const Displacement& next) {
  const Build build = laid(draft);
  const std::size_t later = 2 * static_cast<std::size_t>(next.starts);
  const std::size_t turns = static_cast<std::size_t>(next.turns) * static_cast<std::size_t>(build.stations_per_turn);
  const double width = draft.spool.inside_width_mm;
  std::vector<double> ahead;
  for (std::size_t k = build.strokes[0].first_node; k < build.end_of(0); ++k) {
    const std::size_t other = k + turns;
    if (other < build.strokes.at(later).first_node || other >= build.end_of(later)) continue;
    const double x = build.nodes.x(k);
    if (x < 0.25 * width || x > 0.75 * width) continue;
    ahead.push_back((build.nodes.x(other) - x) * build.strokes[0].direction);
  }
  REQUIRE(ahead.size() > 1000);
  std::sort(ahead.begin(), ahead.end());
  return ahead;
}

std::size_t ribbon_places(const PlanDraft& draft) {
  const Wound wind = wound(draft, {1, 0.5});
  std::size_t places = 0;
  for (const Finding& finding : wind.measurements.findings)
    if (finding.kind == FindingKind::ribbon) places += finding.places.size();
  return places;
}

}  // namespace

TEST_CASE("on a bare barrel the next double stroke lies where it was computed") {
  // Behind, ahead, and beside the one before the last: 15.113, 14.945, 15.559 and 14.439 turns.
  struct Case {
    double pitch_mm;
    int starts;
  };
  for (const Case& one : {Case{19.85, 1}, Case{20.074, 1}, Case{19.282, 2}, Case{20.777, 2}}) {
    for (const Side start : {Side::left, Side::right}) {
      CAPTURE(one.pitch_mm, start == Side::left);
      PlanDraft draft = sample(one.starts + 1.0);
      const double d = draft.fiber.diameter_mm;
      draft.traverse.pitch_mm = one.pitch_mm;
      draft.traverse.start = start;
      const auto all = displacements(guide_cycle(draft.spool, draft.traverse), d, 125.9);
      const auto next = std::find_if(all.begin(), all.end(), [&](const auto& a) { return a.starts == one.starts; });
      REQUIRE(next != all.end());
      // A fiber that stays where it is set down: everywhere.
      draft.fiber.friction = Fiber::held;
      const std::vector<double> held = measured_ahead(draft, *next);
      CHECK(held.front() == Approx(next->ahead_mm).margin(0.1 * d));
      CHECK(held.back() == Approx(next->ahead_mm).margin(0.1 * d));
      // One that rolls where it crosses others: half of it within three fifths of a fiber (a half at most with
      // twice the stations; of flat fiber a seventh).
      draft.fiber.friction = 0.7;
      const std::vector<double> rolled = measured_ahead(draft, *next);
      CHECK(rolled[rolled.size() / 2] == Approx(next->ahead_mm).margin(0.6 * d));
    }
  }
}

TEST_CASE("the sample with a whole ratio is a ribbon, and each safe setting lays it without one") {
  const PlanDraft whole = sample(32.0);
  const PatternTable table = patterns(sound(whole), usual_gap_d);
  REQUIRE(table.rows.size() == 1);
  const PatternRow& row = table.rows.front();
  CHECK(row.pattern.ratio == 15.0);
  CHECK(row.pattern.kind == PatternKind::ribbon);
  CHECK(row.pattern.nearest.starts == 1);
  CHECK(row.pattern.nearest.ahead_mm == 0.0);
  const std::size_t as_it_is = ribbon_places(whole);
  CHECK(as_it_is > 10);
  REQUIRE(row.safe.size() == 4);
  for (const SafeSetting& safe : row.safe) {
    PlanDraft mended = whole;
    (safe.what == SafeSetting::What::pitch ? mended.traverse.pitch_mm : mended.traverse.right_stop_mm) =
        safe.value_mm;
    CAPTURE(safe.value_mm, as_it_is);
    CHECK(ribbon_places(mended) == 0);
  }
  // The cure that the sample's comment gives.
  CHECK(row.safe.front().value_mm == 19.933);
  std::ifstream file(LAYWRIGHT_SOURCE_DIR "/samples/whole-ratio.lay.toml");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  CHECK_THAT(text, Catch::Matchers::Contains("Try 19.933 mm, which gives 15.05."));
}

TEST_CASE("what is called a ribbon of two double strokes is found as one in the build") {
  PlanDraft draft = sample(32.0);
  draft.traverse.pitch_mm = 300.0 / 15.5;
  CHECK(only_pattern(draft).kind == PatternKind::ribbon);
  CHECK(only_pattern(draft).nearest.starts == 2);
  CHECK(ribbon_places(draft) > 5);
}

TEST_CASE(
    "the diameter is estimated as of a wind without ribbons, and ribbons stand over it by what is said of them") {
  const auto estimated_and_laid = [](double pitch_mm) {
    PlanDraft draft = sample(40.0);
    draft.traverse.pitch_mm = pitch_mm;
    const PatternTable table = patterns(sound(draft), usual_gap_d);
    return std::pair{table.rows.back().outside_mm, wound(draft, {1, 0.5}).measurements.outer_diameter};
  };
  const auto [even, even_laid] = estimated_and_laid(19.933);
  CHECK(even_laid.middle_mm == Approx(even).margin(2.5));  // of centre lines: a fiber of 0.9 mm comes on top
  const auto [estimate, ribboned] = estimated_and_laid(20.0);
  CHECK(estimate == Approx(134.0).margin(0.5));
  CHECK(ribboned.middle_mm == Approx(143.0).margin(2.0));
  CHECK(ribboned.greatest_mm == Approx(154.0).margin(4.0));
}
