// The table of an order as a person reads it: the same words and figures in a terminal, on paper and in the window.
#pragma once

#include <cstddef>
#include <string>

#include "order/batch.h"

namespace laywright {

// Without units; what is not known is said to be so.
struct BatchRow {
  std::string spool;  // "2", or "total"
  std::string net, gross, splices, time, fiber, turns, diameter, clearance, verdict;
  Grade grade = Grade::good;  // of the verdict; the worst of all
  std::string takes;          // "reel.lay.toml: piece 1 (16 km)", visible()
  std::string reason;         // the verdict in a line, with what it is of
};

// Of the spool at that place in `batch.spools`. Precondition: its wind was laid.
[[nodiscard]] BatchRow spool_row(const Batch& batch, std::size_t spool, bool inch = false);
// Of all; turns, diameter and clearance stay empty, and so does what is said of one spool.
[[nodiscard]] BatchRow total_row(const Batch& batch, bool inch = false);
// The units of each: m or ft, mm or in, kg or lb; empty where there is none.
[[nodiscard]] BatchRow batch_units(bool inch = false);

}  // namespace laywright
