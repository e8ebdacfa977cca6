// Ridges and heaps in a section of discs, whoever laid them. Lengths in diameters, heights from the floor.
//
// All is measured on the crest: the highest disc within a diameter of x, as a jaw feels it. A ridge is the greatest crest
// within `near_flange` of a flange less the median crest of the middle third. The slope of a face is that of its steepest
// stretch of `face_length`; so a ridge of 3 d cannot show more than atan(3/5) = 31 degrees.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "pile_figures.h"

namespace laywright::bench {

inline constexpr double near_flange = 5.0;
inline constexpr double face_length = 5.0;
inline constexpr double face_begins_within = 15.0;

inline std::vector<double> crest(const std::vector<Place>& places, double width) {
  const std::vector<double> heights = surface(places, width);
  const auto reach = static_cast<std::ptrdiff_t>(columns_per_d);
  const auto count = static_cast<std::ptrdiff_t>(heights.size());
  std::vector<double> crest;
  for (std::ptrdiff_t i = 0; i < count; ++i)
    crest.push_back(*std::max_element(heights.begin() + std::max<std::ptrdiff_t>(0, i - reach),
                                      heights.begin() + std::min(count, i + reach + 1)));
  return crest;
}

// Degrees, of what falls to the right, beginning in columns [from, to).
inline double steepest(const std::vector<double>& crest, std::size_t from, std::size_t to) {
  const auto length = static_cast<std::size_t>(face_length * columns_per_d);
  double drop = 0.0;
  for (std::size_t i = from; i < to && i + length < crest.size(); ++i)
    drop = std::max(drop, crest[i] - crest[i + length]);
  return std::atan(drop / face_length) * 180.0 / std::numbers::pi;
}

struct Ridge {
  double left = 0.0, right = 0.0;  // heights
  // The means of both flanges: slope, and area above the middle within `face_begins_within` of the flange, d^2.
  double slope_deg = 0.0, area = 0.0;
};

inline Ridge ridge_of(const std::vector<Place>& places, double width) {
  std::vector<double> line = crest(places, width);
  const auto third = static_cast<std::ptrdiff_t>(line.size() / 3);
  std::vector<double> middle(line.begin() + third, line.end() - third);
  std::nth_element(middle.begin(), middle.begin() + third / 2, middle.end());
  const double level = middle[static_cast<std::size_t>(third / 2)];
  Ridge ridge;
  for (double* height : {&ridge.left, &ridge.right}) {
    const auto flange = static_cast<std::ptrdiff_t>(near_flange * columns_per_d);
    *height = *std::max_element(line.begin(), line.begin() + flange) - level;
    const auto face = static_cast<std::size_t>(face_begins_within * columns_per_d);
    ridge.slope_deg += 0.5 * steepest(line, 0, face);
    for (std::size_t i = 0; i < face; ++i) ridge.area += 0.5 * (line[i] - level) / columns_per_d;
    std::reverse(line.begin(), line.end());
  }
  return ridge;
}

// Discs that stand straight one on another, the longest such column.
inline int longest_column(std::vector<Place> places) {
  constexpr double straight = 0.15, touching = 1.02;
  std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.r < b.r; });
  std::vector<int> high(places.size(), 1);
  int longest = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    for (std::size_t j = i; j-- > 0 && places[i].r - places[j].r < touching;) {
      const double dx = std::abs(places[i].x - places[j].x);
      if (dx < straight && std::hypot(dx, places[i].r - places[j].r) < touching)
        high[i] = std::max(high[i], high[j] + 1);
    }
    longest = std::max(longest, high[i]);
  }
  return longest;
}

// What stands above `base` within `reach` of x.
struct Heap {
  double height = 0.0;         // of its greatest crest
  double width_half_up = 0.0;  // width at half of that height, less the 2 d by which the crest is wider
  double slope_deg = 0.0;      // mean of the two faces where they are steepest
  // Of a triangle as high and, half way up, as wide.
  double mean_slope_deg = 0.0;
  double lean = 0.0;  // its area's centre, to the right of x
};

inline Heap heap_of(const std::vector<Place>& places, double width, double x, double base, double reach) {
  std::vector<double> line = crest(places, width);
  const double step = width / static_cast<double>(line.size());
  const auto from = static_cast<std::size_t>((x - reach) / step);
  const auto to = static_cast<std::size_t>((x + reach) / step);
  line = {line.begin() + static_cast<std::ptrdiff_t>(from), line.begin() + static_cast<std::ptrdiff_t>(to)};
  Heap heap;
  heap.height = *std::max_element(line.begin(), line.end()) - base;
  double area = 0.0, moment = 0.0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const double above = std::max(0.0, line[i] - base);
    if (above >= 0.5 * heap.height) heap.width_half_up += step;
    area += above;
    moment += above * (static_cast<double>(from + i) * step - x);
  }
  heap.width_half_up -= 2.0;
  heap.mean_slope_deg = std::atan(heap.height / heap.width_half_up) * 180.0 / std::numbers::pi;
  heap.lean = moment / area;
  for (int side = 0; side < 2; ++side) {
    heap.slope_deg += 0.5 * steepest(line, 0, line.size());
    std::reverse(line.begin(), line.end());
  }
  return heap;
}

}  // namespace laywright::bench
