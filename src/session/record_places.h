// Where a recorded spool is best measured, for somebody who has more to say of it.
#pragma once

#include <vector>

#include "plan/lay_plan.h"
#include "records/spool_record.h"
#include "takeup/takeup_run.h"

namespace laywright {

// After the layers that have a checkpoint, and at the end, as they were planned. `plan`: the record's.
[[nodiscard]] std::vector<Checkpoint> checkpoints_of(const SpoolRecord& record, const Plan& plan);

}  // namespace laywright
