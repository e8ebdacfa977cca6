#include "session/record_places.h"

#include "advise/as_wound.h"
#include "plan/dial.h"

namespace laywright {

std::vector<Checkpoint> checkpoints_of(const SpoolRecord& record, const Plan& plan) {
  const Counter* counter = counter_of(plan);
  std::vector<Checkpoint> checkpoints;
  std::size_t next = 1;
  for (const PlannedLayer& each : record.planned) {
    const bool due = static_cast<std::size_t>(each.layer) == next;
    if (due) next = next_checkpoint_layer(next);
    if (!due && !each.at_end) continue;
    Checkpoint checkpoint;
    checkpoint.layer = each.layer;
    checkpoint.at_end = each.at_end;
    checkpoint.length_mm = each.length_mm;
    checkpoint.turns = each.turns;
    checkpoint.outer_diameter_mm = each.outer_diameter_mm;
    if (counter != nullptr) checkpoint.counter_reading = counter_reading(*counter, each.length_mm).reading;
    checkpoints.push_back(checkpoint);
  }
  return checkpoints;
}

}  // namespace laywright
