// What is read on a spool, as cells to type into: the columns, and what an empty cell shows.
#pragma once

#include <string>
#include <vector>

#include "plan/lay_plan.h"
#include "session/typed_readings.h"

namespace laywright {

// The checkpoint of a row; null where it is none.
[[nodiscard]] const Checkpoint* checkpoint_of(const std::vector<Checkpoint>& checkpoints, const TypedRow& row);

// What the cell shows while it is empty: what it should be.
[[nodiscard]] std::string planned_in(const Checkpoint* at, std::size_t cell, bool inch);

// Of the cells, in their order; `counter`: the machine's, or null.
[[nodiscard]] std::vector<std::string> reading_heads(const Counter* counter, bool inch);

}  // namespace laywright
