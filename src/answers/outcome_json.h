// Figures of an outcome as JSON; for the documents of this folder.
#pragma once

#include <nlohmann/json.hpp>

#include "advise/outcome.h"
#include "advise/trial.h"
#include "figures/document_text.h"

namespace laywright {

// Every figure of outcome_figures() by its key; what is not finite is null.
[[nodiscard]] nlohmann::ordered_json outcome_json(const Outcome& outcome);

// [{"key": "traverse.pitch", "value": "0.26 mm"}, ...], values as the plan would have them.
[[nodiscard]] nlohmann::ordered_json changes_json(const PlanDraft& draft, const std::vector<Change>& changes);

}  // namespace laywright
