// The first thing to set, by rules on the check that decides: a plain instruction, without laying another wind. `cause` and
// `improve` search; this is where to begin. It names what a person sets at the machine, and never the friction, which nobody
// sets.
#pragma once

#include <string>

#include "verdict/verdict.h"

namespace laywright {

// Without its stop: "set the right stop nearer to the flange (now 1.2 mm)". `deciding`: of the
// checks. Precondition: all belong together.
[[nodiscard]] std::string first_setting(const Plan& plan, const Build& build, const Measurements& measurements,
                                        const std::vector<Check>& checks, std::size_t deciding);

}  // namespace laywright
