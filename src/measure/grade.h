// How a figure stands to its limit.
//
// Most figures of a build are of one draw of it: another seed, or a machine that differs by less than can be set, lays
// another wind. Ridges of such winds, without a dwell, spread by .2 to .4 d (tests/results.md, ridges by friction), where the usual limit
// is 1 d. So a figure within a quarter of its limit, on either side, is marginal: another spool of the same plan may stand on
// the other side.
#pragma once

#include <cstdint>

namespace laywright {

enum class Grade : std::uint8_t { good, marginal, do_not_wind };

// "good", "marginal", "do not wind": stable, as in the JSON document.
[[nodiscard]] const char* name_of(Grade grade);

inline constexpr double uncertain_share = 0.25;

// Of a figure that may come out so or so; both 0 or more, in the same unit. `at_worst`: however far it is over the limit.
[[nodiscard]] Grade grade_at_most(double value, double limit, Grade at_worst = Grade::do_not_wind);

}  // namespace laywright
