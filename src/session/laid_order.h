// An order as the window lays it: first quickly, then in full.
#pragma once

#include <string>
#include <vector>

#include "jobs/job_result.h"
#include "order/batch.h"
#include "paper/batch_files.h"

namespace laywright {

struct LaidOrder {
  Batch batch;        // order and plans alone where something could not be placed
  Issues not_placed;  // why it cannot be delivered as it stands, each with its line and what to do; empty: it can
  bool full = false;  // false: with few stations, for a quick look
  std::vector<std::string> sheets;  // of a full one: each spool's set-up sheet, as PDF
  std::string drawn_on;             // the day on which it was laid
};

// Of the stations that the model needs, for a quick look.
inline constexpr double quick_fidelity = 0.25;

// Finds out how much each spool takes, which one takes what, and lays and judges the winds. `kinds` as kinds_of has them.
// A full one is laid as the command does by default, and its sheets are drawn on the way.
[[nodiscard]] JobResult<LaidOrder> lay_order(const Order& order, std::vector<SpoolKind> kinds, bool full,
                                             const WindPicture& picture, Progress& progress);

// All files of a full one into a folder, which is made where it is missing: all or none. Gives the bytes that were written.
// Errors: a file cannot be written, or would take the place of the order or of a plan of it.
[[nodiscard]] JobResult<std::size_t> write_order(const LaidOrder& laid, const std::string& folder,
                                                 Progress& progress);

}  // namespace laywright
