// Better settings, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "advise/improve.h"

namespace laywright {

// The plan and each proposal side by side: settings, figures, means over the variants.
struct ProposalRow {
  std::string name;
  std::vector<std::string> cells;  // of the plan, then of each proposal
};
struct ProposalTable {
  std::string title;
  std::vector<ProposalRow> rows;
};
[[nodiscard]] std::vector<ProposalTable> proposal_tables(const Plan& plan, const Improvement& improvement);

// A knob's value as a person reads it: "0.26 mm".
[[nodiscard]] std::string knob_text(const Plan& plan, const Knob& knob, double value);

[[nodiscard]] std::string improve_text(const Plan& plan, const Improvement& improvement);

// One document, format "lay-improve 1".
[[nodiscard]] std::string improve_json(const Plan& plan, const Improvement& improvement);

}  // namespace laywright
