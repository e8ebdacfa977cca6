// What is done with an order in the background: it is laid as the command does, first quickly, and written.
#pragma once

#include <string>

#include "jobs/job_result.h"
#include "paper/laid_order.h"

namespace laywright {

// Of the stations that the model needs, for a quick look.
inline constexpr double quick_fidelity = 0.25;

// As the command does by default, sheets and all; not `full`: quickly, without sheets.
[[nodiscard]] OrderLaying order_laying(bool full, const WindPicture& picture);

// All files of a full one into a folder, which is made where it is missing: all or none. Gives the bytes that were written.
// Errors: a file cannot be written, or would take the place of the order or of a plan of it.
[[nodiscard]] JobResult<std::size_t> write_order(const LaidOrder& laid, const std::string& folder,
                                                 Progress& progress);

}  // namespace laywright
