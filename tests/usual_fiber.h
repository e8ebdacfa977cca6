// The fiber and the barrel that most tests lay: plain_draft()'s.
#pragma once

namespace laywright::testing::usual {

inline constexpr double d = 0.25;       // mm
inline constexpr double radius = 75.0;  // mm, of the barrel

}  // namespace laywright::testing::usual
