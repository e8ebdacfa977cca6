// The patterns of a crossed wind, as text and as JSON.
#pragma once

#include <string>

#include "pattern/pattern_table.h"

namespace laywright {

// At most 100 columns.
[[nodiscard]] std::string pattern_text(const Plan& plan, const PatternTable& table);

// One document, format "lay-pattern 1". Lengths mm, angles deg; of a close wind all that does not apply is null.
[[nodiscard]] std::string pattern_json(const Plan& plan, const PatternTable& table);

}  // namespace laywright
