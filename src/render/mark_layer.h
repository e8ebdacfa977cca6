// Draws findings on the surface (lit bands, hatches, outlined zones, the fiber that a sign stands for), the spool's axis,
// and the guide with its fiber, hidden by what stands before them. Signs and words are on the overlay.
#pragma once

#include <vector>

#include "render/frame.h"
#include "render/gap_layer.h"
#include "render/geometry.h"
#include "render/guide_layer.h"

namespace laywright {

class MarkLayer {
 public:
  void make_ready() const { line_.make_ready(); }  // the axis is a line
  void load(const Scene& scene);
  void draw(const Frame& frame) const;

 private:
  struct Line {
    QuadInstances pieces{0.0F};
    QuadInstances few{0.0F};  // of the same line, for quick frames
    double strays_mm = 0.0;   // how far these leave it
    Rgba colour;
    double opacity = 1.0, width_px = 1.0, dash_mm = 0.0;
    bool on_wind = true;  // cut with it
    bool rimmed = false;  // white beneath, so that it stands out from fiber of any colour
  };
  using Path = std::vector<Vec3>;
  [[nodiscard]] static const QuadInstances& pieces_for(const Frame& frame, const Line& line);
  void add_line(const std::vector<Path>& paths, const Line& style);
  void add_outline(const Scene& scene, const Mark& mark, double dash_mm);
  void add_fiber(const Mark& mark);
  void add_axis(const AxisMark& axis, const ThemeColours& colours);
  void draw_patches(const Frame& frame) const;
  void draw_lines(const Frame& frame) const;

  Program patch_{"patch"}, line_{"line"};
  GridMesh mesh_{1, 120};
  std::vector<Mark> patches_;
  std::vector<Line> lines_;
  GuideLayer guide_;
  GapLayer gaps_;
};

}  // namespace laywright
