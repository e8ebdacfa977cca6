#include "follow/checklist.h"

namespace laywright {

Reading reading_at(const Plan& plan, const Checkpoint& checkpoint) {
  Reading reading;
  if (checkpoint.at_end) {
    reading.at_end = true;
  } else {
    reading.layer = checkpoint.layer;
    reading.counter_turns = checkpoint.turns;
    reading.counter_length_mm = checkpoint.length_mm;
  }
  for (std::size_t zone = 0; zone < checkpoint.outer_diameter_mm.size(); ++zone)
    reading.diameter_mm[zone] = checkpoint.outer_diameter_mm[zone];
  reading.width_mm = plan.spool().inside_width_mm;
  return reading;
}

Result<std::vector<ChecklistRow>> checklist(const Plan& plan, const std::vector<Checkpoint>& checkpoints,
                                            const ReadingErrors& errors, const LaySettings& lay, int draws,
                                            int threads, const Stretch& stretch) {
  AsWound as_planned;
  std::vector<ChecklistRow> rows;
  for (const Checkpoint& each : checkpoints) {
    as_planned.readings.push_back(reading_at(plan, each));
    rows.push_back({each, {}});
  }
  const Result<Beside> beside = beside_plan(plan, as_planned, errors, lay, draws, threads, stretch);
  if (!beside.ok()) return beside.issues();
  for (const Compared& each : beside.value().readings) rows[each.observation.reading].read.push_back(each);
  return rows;
}

}  // namespace laywright
