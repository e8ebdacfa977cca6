// The inch system in metric units: exact, by the international yard and pound of 1959 and standard gravity.
#pragma once

namespace laywright {

inline constexpr double mm_per_inch = 25.4, mm_per_foot = 304.8, m_per_foot = 0.3048;
inline constexpr double kg_per_pound = 0.45359237;
inline constexpr double newtons_per_pound_force = 4.4482216152605;

}  // namespace laywright
