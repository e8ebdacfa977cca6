// Better settings, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "advise/improve.h"

namespace laywright {

// The plan and each proposal side by side: settings, the figures that the verdict weighs, how many variants are good.
struct ProposalRow {
  std::string name;
  std::vector<std::string> cells;  // of the plan, then of each proposal
};
struct ProposalTable {
  std::string title;
  std::vector<ProposalRow> rows;
};
[[nodiscard]] std::vector<ProposalTable> proposal_tables(const Plan& plan, const Improvement& improvement);

[[nodiscard]] std::string improve_text(const Plan& plan, const Improvement& improvement);

// One document, format "lay-improve 1".
[[nodiscard]] std::string improve_json(const Plan& plan, const Improvement& improvement);

}  // namespace laywright
