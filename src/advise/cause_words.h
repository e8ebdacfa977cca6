// Sentences of an explanation; every figure in them is one of its trials.
#pragma once

#include <string>

#include "advise/cause.h"

namespace laywright {

[[nodiscard]] std::string words_of(const Plan& plan, const Explanation& explanation, const Remedy& remedy);

[[nodiscard]] std::string conclusion_of(const Plan& plan, const Explanation& explanation);

// "3 pile-ups", "1 dropped turn".
[[nodiscard]] std::string counted(FindingKind kind, int places);

}  // namespace laywright
