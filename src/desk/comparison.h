// What differs between two builds, as a table.
#pragma once

#include <string>
#include <vector>

#include "desk/wound.h"

namespace laywright {

struct DifferenceRow {
  std::string name;           // "outer diameter, middle"
  std::string first, second;  // as a person reads them, with unit; "-" where there is none
  std::string difference;     // second minus first, with sign and unit; "same", or "-" where one is missing
  int sign = 0;               // of the difference
};

struct DifferenceTable {
  std::vector<DifferenceRow> settings;  // of the plans that differ
  std::vector<DifferenceRow> totals;
  std::vector<DifferenceRow> findings;  // by kind: in how many places; kinds that neither has are left out
};

[[nodiscard]] DifferenceTable compare(const Wound& first, const Wound& second, Units units);

}  // namespace laywright
