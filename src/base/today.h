// The date and time at which something is made.
#pragma once

#include <string>

namespace laywright {

// "2026-11-29", of the local time. Where SOURCE_DATE_EPOCH is set (seconds since 1970; reproducible-builds.org), that day of UTC, so
// that what is made twice is the same.
[[nodiscard]] std::string today();

// "2026-11-29T13:50:12Z": now, in UTC; by SOURCE_DATE_EPOCH as above.
[[nodiscard]] std::string moment();

}  // namespace laywright
