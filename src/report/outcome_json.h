// Figures of an outcome as JSON; for the documents of this folder.
#pragma once

#include <nlohmann/json.hpp>

#include "advise/outcome.h"
#include "advise/trial.h"

namespace laywright {

// Every figure of outcome_figures() by its key; what is not finite is null.
[[nodiscard]] nlohmann::ordered_json outcome_json(const Outcome& outcome);

// [{"key": "traverse.pitch", "value": "0.26 mm"}, ...], values as the plan would have them.
[[nodiscard]] nlohmann::ordered_json changes_json(const PlanDraft& draft, const std::vector<Change>& changes);

// A document as text: indented, ending with a line feed; bytes that are not UTF-8 are replaced.
[[nodiscard]] std::string document_text(const nlohmann::ordered_json& document);

}  // namespace laywright
