// A fit in words.
#pragma once

#include <string>

#include "advise/fit.h"

namespace laywright {

[[nodiscard]] std::string conclusion_of(const Plan& plan, const Fit& fit);

}  // namespace laywright
