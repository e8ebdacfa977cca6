// What angles and lengths are divided by to be told, and multiplied by to be read: the program computes in radians and millimetres.
#pragma once

#include <numbers>

namespace laywright {

inline constexpr double full_turn = 2.0 * std::numbers::pi;  // rad
inline constexpr double rad_per_deg = std::numbers::pi / 180.0;
inline constexpr double deg_per_rad = 180.0 / std::numbers::pi;
inline constexpr double mm_per_m = 1e3;
inline constexpr double mm_per_km = 1e6;

}  // namespace laywright
