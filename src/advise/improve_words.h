// What an improvement gains and costs, in words.
#pragma once

#include "advise/improve.h"

namespace laywright {

[[nodiscard]] std::string words_of(const Plan& plan, const Improvement& improvement, const Proposal& proposal);

[[nodiscard]] std::string conclusion_of(const Plan& plan, const Improvement& improvement);

}  // namespace laywright
