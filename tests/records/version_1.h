// A database as the first version wrote it, with one record. Written down once and never changed: that is what stands in
// people's files.
#pragma once

#include <string>
#include <vector>

namespace laywright::testing {

[[nodiscard]] std::vector<std::string> version_1();

}  // namespace laywright::testing
