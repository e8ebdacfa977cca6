// Where things are in the picture. Stated once, here; all folders that draw follow it.
//
// The spool stands still and is described in cylinder coordinates: x along its axis, 0 at the inner face of the left
// flange at the barrel, to the right; r from the axis; angle in rad from the start of the wind, 0 at the first node
// (station 0). Node k lies at the angle 2 pi (k % stations) / stations.
//
// In space, right-handed, in mm:   X = x,   Y = r cos(angle),   Z = r sin(angle).
// X to the right, Y up, Z towards a viewer at azimuth 0: the start of the wind is on top, and angles grow from the
// top towards the viewer.
//
// A position along the fiber is counted in turns of the spool from the start; turn t is at node t * stations. It does
// not depend on the fineness of a build, so a coarse build and a full one are looked at with the same view.
#pragma once

#include <cmath>
#include <cstdint>

#include <glm/vec3.hpp>

#include "base/units.h"

namespace laywright {

using Vec3 = glm::dvec3;

[[nodiscard]] inline Vec3 in_space(double x, double r, double angle) {
  return {x, r * std::cos(angle), r * std::sin(angle)};
}

// Angle of a place around the axis, 0 to below 2 pi; 0 on the axis.
[[nodiscard]] inline double angle_of(const Vec3& place) {
  const double angle = std::atan2(place.z, place.y);
  const double positive = angle < 0.0 ? angle + full_turn : angle;
  return positive < full_turn ? positive : 0.0;
}

[[nodiscard]] inline double radius_of(const Vec3& place) { return std::hypot(place.y, place.z); }

// A colour of the screen (sRGB), 8 bits a channel; alpha 255 is opaque, not premultiplied. In memory: r, g, b, a.
struct Rgba {
  std::uint8_t r = 0, g = 0, b = 0, a = 255;

  [[nodiscard]] bool operator==(const Rgba&) const = default;
};

// Stands for "no node" wherever a node of 32 bits is stored.
inline constexpr std::uint32_t no_node = 0xFFFFFFFFU;

}  // namespace laywright
