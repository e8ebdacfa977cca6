#include "plan/guide_cycle.h"

namespace laywright {

GuideCycle guide_cycle(const Spool& spool, const Traverse& traverse) {
  GuideCycle cycle;
  cycle.stroke_mm = spool.inside_width_mm - traverse.left_stop_mm - traverse.right_stop_mm;
  cycle.pitch_mm = traverse.pitch_mm;
  cycle.lost_motion_mm = traverse.reversal.lost_motion_mm;
  switch (traverse.reversal.kind) {
    case ReversalKind::instant: break;
    case ReversalKind::dwell: cycle.standing_turns = traverse.reversal.turns; break;
    case ReversalKind::ramp: cycle.standing_turns = 0.5 * traverse.reversal.turns; break;
  }
  return cycle;
}

double winding_ratio(const GuideCycle& cycle) {
  return 2.0 * ((cycle.stroke_mm + cycle.lost_motion_mm) / cycle.pitch_mm + cycle.standing_turns);
}

}  // namespace laywright
