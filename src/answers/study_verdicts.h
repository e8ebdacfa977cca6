// The verdicts of a study as text: how many are good, which settings, and what decides.
#pragma once

#include <string>

#include "advise/study_statistics.h"

namespace laywright {

// Of a grid: over one key a line for each value; over two a map of signs, where it is no wider than a terminal. Ends with a line
// feed.
[[nodiscard]] std::string study_verdicts(const Study& study);

// Of tolerances: how many of the winds are of which grade, the chance of a good one, and what decides against it.
[[nodiscard]] std::string tolerance_verdicts(const Study& study, const ToleranceStatistics& statistics);

// "good in 5, marginal in 2, do not wind in 8 of 15 builds".
[[nodiscard]] std::string grades_words(const GradeCount& count, const char* what);

// That coarse builds may be judged otherwise than fine ones; empty of fine ones.
[[nodiscard]] std::string coarse_words(const Study& study);

}  // namespace laywright
