// Outer surface over x at one station, as heights over a base radius.
#pragma once

#include <cstddef>
#include <vector>

namespace laywright {

// Points at (i + 1/2) * spacing, shared by all stations.
struct SurfaceGrid {
  std::size_t points = 0;
  double spacing_mm = 0.0;
  std::size_t beyond = 0;  // points beyond each end, over the openings of tapered flanges
  std::size_t margin = 0;  // points kept beyond each end, so that circles need no clipping

  // Precondition of opening_mm: 0 or more.
  [[nodiscard]] static SurfaceGrid over(double width_mm, double fiber_diameter_mm, double opening_mm = 0.0);
};

// The upper half of a fiber's circle on the points that it covers, for each of 64 places of its edge between two
// points: no root is taken for a circle, and it is misplaced by less than a thousandth of a diameter. The edges
// reach as far beyond the circle, so that no bare spot shows between turns that touch.
class CirclePrint {
 public:
  CirclePrint(const SurfaceGrid& grid, double fiber_diameter_mm);

  static constexpr std::size_t places = 64;
  [[nodiscard]] const float* at(std::size_t place) const { return &heights_[place * points_]; }
  [[nodiscard]] std::size_t points() const { return points_; }  // a multiple of four
  [[nodiscard]] double half_width_mm() const { return half_width_mm_; }

 private:
  std::size_t points_ = 0;
  double half_width_mm_ = 0.0;
  std::vector<float> heights_;
};

class HeightField {
 public:
  // `floor` gives the height at each of the grid's points before anything is laid.
  HeightField(const SurfaceGrid& grid, const std::vector<float>& floor);

  // Lays a circle with its centre at x and at this height. What lies beyond the grid and its openings is left out.
  void lay(const CirclePrint& print, double x_mm, double height_mm);

  [[nodiscard]] const SurfaceGrid& grid() const { return grid_; }
  [[nodiscard]] float operator[](std::size_t point) const { return heights_[grid_.margin + point]; }
  // The same, counted from the first point of the left opening; far below everything where nothing was laid there.
  [[nodiscard]] float with_openings(std::size_t point) const {
    return heights_[grid_.margin - grid_.beyond + point];
  }

  // Adds to each of the grid's points its crest: the greatest height within so many points either way. At most as many as the
  // grid has.
  void add_crests(std::size_t reach, std::vector<double>& sums, std::vector<float>& scratch) const;

 private:
  SurfaceGrid grid_;
  std::vector<float> heights_;
};

}  // namespace laywright
