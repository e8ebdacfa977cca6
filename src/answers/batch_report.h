// An order over spools as text, JSON and CSV. On paper: batch_sheet.h.
#pragma once

#include <string>

#include "order/batch.h"

namespace laywright {

// A table of a row for each spool, below it what the spool takes and why its verdict is what it is, and a total line.
[[nodiscard]] std::string batch_text(const Batch& batch);

// One JSON document, "lay-batch 1". Lengths in m where the key says so, else mm.
[[nodiscard]] std::string batch_json(const Batch& batch);

// As the other tables: UTF-8, a header with units, a record for each spool and one of the total.
[[nodiscard]] std::string batch_csv(const Batch& batch);

}  // namespace laywright
