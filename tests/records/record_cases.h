// What must hold wherever records are kept: the same cases for a file and for a server. Each is given a place that holds
// nothing.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "records/records_place.h"

namespace laywright::testing {

struct RecordCase {
  std::string name;
  std::function<void(const RecordsPlace&)> run;
};

[[nodiscard]] const std::vector<RecordCase>& record_cases();

}  // namespace laywright::testing
