// An order over spools on paper.
#pragma once

#include <string>
#include <vector>

#include "order/batch.h"
#include "paper/drawing.h"

namespace laywright {

// A4 pages: what is delivered, a table with a row for each spool and below it what it takes and why its verdict is what it is,
// the total, and what the figures are. `drawn_on`: today, as the set-up sheet has it; empty: not told.
[[nodiscard]] std::vector<Drawing> draw_batch_sheet(const Batch& batch, const std::string& drawn_on);

}  // namespace laywright
