// Safe settings of random crossed winds, held against the lay model's guide.
#include <cmath>
#include <numbers>

#include "base/random.h"
#include "crossed_plan.h"
#include "lay/guide.h"
#include "pattern/pattern_table.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

PlanDraft random_draft(Random& random) {
  const auto between = [&](double low, double high) { return low + (high - low) * random.uniform(); };
  PlanDraft draft = whole_ratio_draft();
  draft.fiber.diameter_mm = between(0.2, 2.0);
  draft.traverse.pitch_mm = draft.fiber.diameter_mm * between(2.5, 30.0);
  draft.traverse.left_stop_mm = between(-1.0, 10.0);
  draft.traverse.right_stop_mm = between(1.0, 10.0);
  draft.traverse.reversal.lost_motion_mm = random.uniform() < 0.5 ? 0.0 : between(0.0, 2.0);
  const double kind = random.uniform();
  draft.traverse.reversal.kind = kind < 0.3   ? ReversalKind::instant
                                 : kind < 0.6 ? ReversalKind::dwell
                                              : ReversalKind::ramp;
  if (kind >= 0.3) draft.traverse.reversal.turns = between(0.0, 3.0);
  return draft;
}

// How far ahead the strand of `starts` double strokes later lies, mm along the axis, in the direction of the strokes: to
// the nearest of its turns.
double counted_ahead(const Plan& plan, int starts) {
  Guide guide(plan, 1);
  const double pitch = plan.traverse().pitch_mm;
  // x - p T, which stays the same while the guide runs; read at the end of the run of the strokes 2 and 2 + 2 b.
  double angle = 0.0, first = 0.0, last = 0.0;
  for (;;) {
    const GuidePiece piece = guide.advance(1e9);
    angle += piece.angle;
    const bool runs = piece.bend == 0.0 && std::abs(piece.slope) > 0.0;
    if (!runs || guide.stroke() < 2) continue;
    const double place = piece.end() - pitch * angle / (2.0 * std::numbers::pi);
    if (guide.stroke() == 2) first = place;
    if (guide.stroke() == 2 + 2 * starts) last = place;
    if (guide.stroke() > 2 + 2 * starts) break;
  }
  const double moved = last - first;
  return moved - pitch * std::round(moved / pitch);
}

}  // namespace

TEST_CASE("over random crossed winds the safe settings lie as far beside as they say, by the guide itself") {
  Random random(7);
  int settings = 0, winds = 0;
  while (winds < 300) {
    const PlanDraft draft = random_draft(random);
    const Result<Plan> plan = check(draft);
    if (!plan.ok()) continue;
    ++winds;
    const double d = draft.fiber.diameter_mm;
    const PatternTable table = patterns(plan.value(), 0.1);
    for (const SafeSetting& safe : table.rows.at(0).safe) {
      ++settings;
      PlanDraft mended = draft;
      const bool pitch = safe.what == SafeSetting::What::pitch;
      (pitch ? mended.traverse.pitch_mm : mended.traverse.right_stop_mm) = safe.value_mm;
      const Plan changed = sound(mended);
      CAPTURE(winds, pitch, safe.value_mm, safe.pattern.ratio, d);
      const double across = std::cos(winding_angle_rad(mended.traverse.pitch_mm, 125.0 + d)) / d;
      for (int starts = 1; starts <= most_starts && mended.traverse.pitch_mm > 2.0 * starts * d; ++starts) {
        const double ahead = counted_ahead(changed, starts);
        CHECK(std::abs(ahead) * across >= 1.0 - 1e-6);
        if (starts == safe.pattern.nearest.starts) {
          CHECK(std::abs(ahead) * across <= 1.2 + 1e-6);
          CHECK(ahead == Approx(safe.pattern.nearest.ahead_mm).margin(1e-6));
        }
      }
    }
  }
  // Two pitches and two stops for most that are not close patterns already.
  CHECK(settings > 800);
}
