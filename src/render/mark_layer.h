// Draws findings on the surface (lit bands, hatches, outlined zones) and the spool's axis, hidden by what stands before
// them. Signs and words are on the overlay.
#pragma once

#include <vector>

#include "render/frame.h"
#include "render/geometry.h"

namespace laywright {

class MarkLayer {
 public:
  void load(const Scene& scene);
  void draw(const Frame& frame) const;

 private:
  struct Line {
    QuadInstances pieces{0.0F};
    Rgba colour;
    double opacity = 1.0, width_px = 1.0, dash_mm = 0.0;
  };
  void add_line(const std::vector<Vec3>& places, std::size_t first, std::size_t last, const Line& style);
  void add_outline(const Mark& mark, double dash_mm);
  void add_axis(const AxisMark& axis, const ThemeColours& colours);
  void draw_patches(const Frame& frame) const;

  Program patch_{"patch"}, line_{"line"};
  GridMesh mesh_{1, 120};
  std::vector<Mark> patches_;
  std::vector<Line> lines_;
};

}  // namespace laywright
