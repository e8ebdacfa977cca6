// How closely a pile of discs lies, and how far any two enter each other. Lengths in diameters, heights from the floor.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "physics_pile.h"

namespace laywright::bench {

inline constexpr double disc_area = 0.25 * std::numbers::pi;
inline constexpr double columns_per_d = 20.0;

// The outer surface: the highest disc above each of many places along the width, the floor where there is none.
inline std::vector<double> surface(const std::vector<Place>& places, double width) {
  const auto columns = static_cast<std::size_t>(std::ceil(columns_per_d * width));
  const double step = width / static_cast<double>(columns);
  std::vector<double> surface(columns, 0.0);
  for (const Place& place : places) {
    const double first = std::max(0.0, std::ceil((place.x - 0.5) / step - 0.5));
    for (double i = first; i < static_cast<double>(columns) && (i + 0.5) * step < place.x + 0.5; i += 1.0) {
      const double dx = (i + 0.5) * step - place.x;
      double& r = surface[static_cast<std::size_t>(i)];
      r = std::max(r, place.r + std::sqrt(std::max(0.0, 0.25 - dx * dx)));
    }
  }
  return surface;
}

inline double mean_height(const std::vector<Place>& places, double width) {
  const std::vector<double> heights = surface(places, width);
  double sum = 0.0;
  for (const double r : heights) sum += r;
  return sum / static_cast<double>(heights.size());
}

// Share of the area below the outer surface that discs cover.
inline double fill(const std::vector<Place>& places, double width) {
  return static_cast<double>(places.size()) * disc_area / (width * mean_height(places, width));
}

// Share of a rectangle that discs cover, in percent.
inline double packing_between(const std::vector<Place>& places, double left, double right, double low, double high) {
  const auto inside = std::count_if(places.begin(), places.end(), [&](const Place& place) {
    return place.x > left && place.x <= right && place.r > low && place.r <= high;
  });
  return 100.0 * static_cast<double>(inside) * disc_area / ((right - left) * (high - low));
}

// Share well inside: away from floor, walls and surface.
inline double packing(const std::vector<Place>& places, double width) {
  const double margin = 10.0;
  return 0.01 * packing_between(places, margin, width - margin, 15.0, mean_height(places, width) - 10.0);
}

// Greatest depth that a disc enters another, the floor or a wall by.
inline double deepest(std::vector<Place> places, double width) {
  std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.x < b.x; });
  double depth = 0.0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Place& a = places[i];
    depth = std::max({depth, 0.5 - a.r, 0.5 - a.x, a.x + 0.5 - width});
    for (std::size_t j = i + 1; j < places.size() && places[j].x - a.x < 1.0; ++j)
      depth = std::max(depth, 1.0 - std::hypot(places[j].x - a.x, places[j].r - a.r));
  }
  return depth;
}

}  // namespace laywright::bench
