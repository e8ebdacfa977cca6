// Several plans in one table: a row for each, of what came of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "verdict/verdict.h"

namespace laywright {

struct WoundFigures {
  double turns = 0.0, length_mm = 0.0;
  double outer_diameter_mm = 0.0;  // the greatest
  double rim_clearance_mm = 0.0;
};

struct PlanRow {
  std::string file;     // as the person named it
  std::string verdict;  // its grade, or what kept it from one: "not sound"
  std::string reason;   // a sentence without its stop; may be empty
  std::string line;     // the verdict in a line, where it was laid
  std::optional<WoundFigures> wound;
};

// Of a plan that was laid. Precondition: all belong to the plan, complete.
[[nodiscard]] PlanRow plan_row(const Plan& plan, const Build& build, const Measurements& measurements,
                               const WindVerdict& verdict);

// As text, in the order of the rows; each line or reason stands below its row. Where no plan was laid, without the columns of figures.
[[nodiscard]] std::string plan_table(const std::vector<PlanRow>& rows);

// One JSON document: `documents` has the "lay-build 1" of each row, null where it was not laid.
[[nodiscard]] std::string plans_json(const std::vector<PlanRow>& rows,
                                     std::vector<nlohmann::ordered_json> documents);

}  // namespace laywright
