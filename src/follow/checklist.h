// At which places of a wind to read, and what the plan has there.
#pragma once

#include <vector>

#include "follow/planned.h"
#include "takeup/takeup_run.h"

namespace laywright {

struct ChecklistRow {
  Checkpoint at;
  std::vector<Compared> read;  // what was `measured` is the plan's own
};

// The readings of one checkpoint, all that can be taken there, as the plan has them: turns and length counted, diameters left,
// middle and right, the width of the layer. At the end of the wind turns and length say where it is, and are not compared.
[[nodiscard]] Reading reading_at(const Plan& plan, const Checkpoint& checkpoint);

// Of each of these checkpoints (TakeupRun): planned values with their tolerance, as beside_plan() has them. Errors: as that.
[[nodiscard]] Result<std::vector<ChecklistRow>> checklist(const Plan& plan,
                                                          const std::vector<Checkpoint>& checkpoints,
                                                          const ReadingErrors& errors, const LaySettings& lay,
                                                          int draws, int threads, const Stretch& stretch);

}  // namespace laywright
