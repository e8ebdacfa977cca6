// An explanation of a finding, as text and as JSON.
#pragma once

#include <string>

#include "advise/cause.h"

namespace laywright {

// `number`: of the finding in the list of the build, from 1.
[[nodiscard]] std::string cause_text(const Plan& plan, const Explanation& explanation, std::size_t number);

// One document, format "lay-cause 1".
[[nodiscard]] std::string cause_json(const Plan& plan, const Explanation& explanation, std::size_t number);

}  // namespace laywright
