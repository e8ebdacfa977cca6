// Records as a person reads them, and as JSON documents.
#pragma once

#include <string>
#include <vector>

#include "records/record_book.h"
#include "records/spool_record.h"
#include "records/trends.h"

namespace laywright {

// A line for each record.
[[nodiscard]] std::string records_text(const std::vector<SpoolRecord>& records);
// "lay-record-list 1": what the lines say, and the readings' outermost differences.
[[nodiscard]] std::string records_json(const std::vector<SpoolRecord>& records);

// The whole of one: what was planned and measured side by side, and all that people said.
[[nodiscard]] std::string record_text(const SpoolRecord& record);
[[nodiscard]] std::string record_json(const SpoolRecord& record);  // "lay-record 1"

[[nodiscard]] std::string trends_text(const Trends& trends);
[[nodiscard]] std::string trends_json(const Trends& trends);  // "lay-trends 1"
[[nodiscard]] std::string trends_csv(const Trends& trends);

}  // namespace laywright
