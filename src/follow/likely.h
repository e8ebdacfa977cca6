// What most likely is off in a wind whose readings are off.
//
// Machines rarely go wrong in two places at once: what one setting alone explains is not spread over several. So each
// is fitted alone (advise/fit.h); those that explain the readings as well as the best of them cannot be told apart, and all are
// told. Only where none does, all are fitted together.
#pragma once

#include <vector>

#include "advise/fit.h"

namespace laywright {

struct Likely {
  Fit fit;
  std::vector<Fit>
      as_likely;  // others, each of one setting, that the readings cannot tell from it; the likeliest first
};

// Wider beliefs than of a spool that is done, since something is known to be wrong: pitch 3 %, each stop one fiber diameter, a
// dwell one turn, lost motion one pitch, which stands for a dwell where the plan has none. Friction is taken as planned.
// Errors: as fit().
[[nodiscard]] Result<Likely> likely_off(const Plan& plan, const AsWound& wound, const LaySettings& lay,
                                        const ReadingErrors& errors, int threads, const Stretch& stretch);

}  // namespace laywright
