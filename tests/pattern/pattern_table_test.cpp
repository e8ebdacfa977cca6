#include "pattern/pattern_table.h"

#include <cmath>
#include <numbers>

#include "advise/narrow_plan.h"
#include "crossed_plan.h"
#include "lay/guide.h"

using namespace laywright;
using namespace laywright::testing;

using std::numbers::pi;

TEST_CASE("safe pitches give one fiber and the gap to either side, on the grid of a thousandth") {
  for (const double gap : {0.02, 0.1, 0.5}) {
    for (const double pitch : {20.0, 19.36, 18.9}) {
      PlanDraft draft = whole_ratio_draft();
      draft.traverse.pitch_mm = pitch;
      const PatternTable table = patterns(sound(draft), gap);
      const PatternRow& row = table.rows.at(0);
      CAPTURE(gap, pitch, row.pattern.ratio);
      int below = 0, above = 0;
      for (const SafeSetting& safe : row.safe) {
        if (safe.what != SafeSetting::What::pitch) continue;
        ++(safe.value_mm < pitch ? below : above);
        CHECK(safe.value_mm * 1000.0 == Approx(std::round(safe.value_mm * 1000.0)).margin(1e-9));
        // By hand: b * 300 / p turns, from the whole number that it is near, times p, across the fiber.
        const double b = safe.pattern.nearest.starts, turns = b * 300.0 / safe.value_mm;
        const double angle = std::atan(safe.value_mm / (pi * 125.9));
        const double off_d = std::abs(turns - std::round(turns)) * safe.value_mm * std::cos(angle) / 0.9;
        // A thousandth of a pitch moves the strand by as many thousandths as it has turns in between.
        CHECK(off_d >= 1.0);
        CHECK(off_d == Approx(1.0 + gap).margin(0.001 * turns / 0.9));
        CHECK(safe.pattern.kind == PatternKind::close_pattern);
      }
      // At the least gap a step of a thousandth may be too coarse.
      if (gap > 0.02) CHECK((below == 1 && above == 1));
    }
  }
}

TEST_CASE("a close pattern of the whole ratio, by hand") {
  // (300 -+ 1.1 * 0.9 / cos(angle)) / 15 = 19.93392 and 20.06608 mm with cos(angle) = .99872.
  const PatternTable table = patterns(sound(whole_ratio_draft()), 0.1);
  const std::vector<SafeSetting>& safe = table.rows.at(0).safe;
  REQUIRE(safe.size() == 4);
  CHECK(safe[0].value_mm == 19.933);
  CHECK(safe[0].pattern.nearest.ahead_mm == Approx(15.0 * 19.933 - 300.0));
  CHECK(safe[1].value_mm == 20.067);
  CHECK(safe[1].pattern.nearest.ahead_mm == Approx(15.0 * 20.067 - 300.0));
  // A stroke longer by half of 1.1 * 0.9 / cos(angle) = .99127 mm lays it that far behind.
  CHECK(safe[2].value_mm == 4.504);
  CHECK(safe[2].pattern.nearest.ahead_mm == Approx(-0.992));
  CHECK(safe[3].value_mm == 5.496);
  CHECK(safe[3].pattern.nearest.ahead_mm == Approx(0.992));
}

TEST_CASE("a plan that is set to a safe setting is a close pattern") {
  const PlanDraft draft = whole_ratio_draft();
  const PatternTable table = patterns(sound(draft), 0.1);
  REQUIRE(table.rows.at(0).safe.size() == 4);
  for (const SafeSetting& safe : table.rows[0].safe) {
    CAPTURE(safe.value_mm);
    PlanDraft mended = draft;
    (safe.what == SafeSetting::What::pitch ? mended.traverse.pitch_mm : mended.traverse.right_stop_mm) =
        safe.value_mm;
    const PatternRow row = patterns(sound(mended), 0.1).rows.at(0);
    CHECK(row.pattern.kind == PatternKind::close_pattern);
    CHECK(row.pattern.nearest.ahead_d == safe.pattern.nearest.ahead_d);
    CHECK(row.safe.empty());
  }
}

TEST_CASE("each step of the wind has a row, and is mended by its own keys") {
  PlanDraft draft = whole_ratio_draft();
  draft.wind.steps = {{9, 19.85, {}, {}}, {21, {}, 6.0, 9.0}, {2000, 1.0, {}, {}}};
  const PatternTable table = patterns(sound(draft), 0.1);
  REQUIRE(table.rows.size() == 4);
  CHECK(table.rows[0].from_layer == 1);
  CHECK(table.rows[0].to_layer == 8);
  CHECK(table.rows[0].pattern.kind == PatternKind::ribbon);
  CHECK_FALSE(table.rows[0].step);
  CHECK(table.rows[1].from_layer == 9);
  CHECK(table.rows[1].to_layer == 20);
  CHECK(table.rows[1].pattern.ratio == Approx(300.0 / 19.85));
  CHECK(table.rows[1].step == std::optional<std::size_t>(0));
  // The step that only moves the stops keeps the pitch of the one before.
  CHECK(table.rows[2].pattern.ratio == Approx(290.0 / 19.85));
  // 600 turns: 8 layers of 7.5, 12 of 7.557, then 7.305 each: 449.3 turns are 61.5 layers.
  CHECK(table.rows[2].to_layer == 82);
  CHECK(table.rows[2].reached);
  CHECK_FALSE(table.rows[3].reached);
  CHECK(table.rows[3].pattern.kind == PatternKind::close_wind);
  CHECK(table.rows[3].safe.empty());
  for (std::size_t i = 1; i < 3; ++i) CHECK(table.rows[i].inside_mm == table.rows[i - 1].outside_mm);
}

TEST_CASE("the estimated outside is near to that of a build") {
  // Only the angle hangs on it, and moves by a fiftieth when what is wound is a fifth higher.
  for (const double pitch : {19.85, 8.03, 1.0}) {
    PlanDraft draft = whole_ratio_draft();
    draft.traverse.pitch_mm = pitch;
    const PatternRow row = patterns(sound(draft), 0.1).rows.at(0);
    const Wound wind = wound(draft, {1, 0.5});
    const double outer = wind.measurements.outer_diameter.middle_mm;
    CAPTURE(pitch, outer, row.outside_mm, wind.measurements.fill_factor);
    CHECK(row.outside_mm + 0.9 == Approx(outer).margin(0.2 * (outer - 125.0)));
    CHECK(row.to_layer == static_cast<int>(wind.build.strokes.size()));
  }
}

TEST_CASE("the angle at both ends of the diameter, and the displacement there") {
  PlanDraft draft = whole_ratio_draft();
  draft.wind.turns.reset();
  draft.wind.diameter_mm = 180.0;
  draft.traverse.pitch_mm = 19.85;
  const PatternRow row = patterns(sound(draft), 0.1).rows.at(0);
  CHECK(row.inside_mm == Approx(125.9));
  CHECK(row.outside_mm == Approx(179.1));
  CHECK(std::tan(row.inside_angle_rad) == Approx(19.85 / (pi * 125.9)));
  CHECK(std::tan(row.outside_angle_rad) == Approx(19.85 / (pi * 179.1)));
  CHECK(row.outside_ahead_d == Approx(-2.5 * std::cos(row.outside_angle_rad)));
  CHECK(row.pattern.nearest.ahead_d == Approx(-2.5 * std::cos(row.inside_angle_rad)));
}

TEST_CASE("a wind that ends within its first layer is no thinner outside than inside") {
  PlanDraft draft = whole_ratio_draft();
  draft.wind.turns.reset();
  draft.wind.diameter_mm = 126.0;
  const PatternRow row = patterns(sound(draft), 0.1).rows.at(0);
  CHECK(row.inside_mm == Approx(125.9));
  CHECK(row.outside_mm == row.inside_mm);
  CHECK(row.to_layer == 1);
}

TEST_CASE("the spread of the machine is that of its strokes") {
  PlanDraft draft = whole_ratio_draft();
  draft.traverse.pitch_mm = 19.85;
  draft.traverse.reversal.stop_scatter_mm = 0.2;
  draft.traverse.guide_play_mm = 0.6;
  draft.traverse.pitch_scatter = 0.001;
  const PatternRow row = patterns(sound(draft), 0.1).rows.at(0);
  // One sigma over many double strokes of the lay model's guide: where each stroke to the right ends, against where the
  // one before ended and the turns in between.
  Guide guide(sound(draft), 1);
  std::vector<double> ends;
  double angle = 0.0, x = 0.0;
  for (int stroke = 0; stroke < 8000;) {
    const GuidePiece piece = guide.advance(1e9);
    if (guide.stroke() != stroke && stroke++ % 2 == 0) ends.push_back(x - 19.85 * angle / (2.0 * pi));
    angle += piece.angle;
    x = piece.end();
  }
  double sum = 0.0;
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const double off = ends[i] - ends[i - 1] + 300.0;
    sum += off * off;
  }
  const double sigma = std::sqrt(sum / static_cast<double>(ends.size() - 1));
  CHECK(row.scatter_d == Approx(sigma * std::cos(row.inside_angle_rad) / 0.9).epsilon(0.05));
}

TEST_CASE("a stepped guide has no rows") {
  CHECK(patterns(sound(mini_spool()), 0.1).stepped);
  CHECK(patterns(sound(mini_spool()), 0.1).rows.empty());
}
