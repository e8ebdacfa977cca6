// Faces of cuts: the turns that a plane through the axis crosses, and the plane across it.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/scene_source.h"

namespace laywright {

// A part of an axial section.
struct FaceWindow {
  double x_from = 0.0, x_to = 0.0, r_from = 0.0, r_to = 0.0;
};

// A turn where it crosses the half plane at exactly that angle, between its stations in a straight line in x and r.
// A true circle: at winding pitches the section of a tilted turn differs by far less than a pixel.
struct FaceDisc {
  float x_mm = 0.0F, r_mm = 0.0F;  // of the centre; the diameter is the fiber's
  std::uint32_t node = 0;          // at or before the crossing
  Rgba colour;                     // of its layer, or of the colouring; faded outside the chosen layers
};

// Around all that is wound, whatever the view shows of it.
[[nodiscard]] FaceWindow whole_face(const SceneSource& source);

// All turns whose circles reach into the window and that the view shows (faded ones included), oldest first. Cost:
// the turns in the window, and a thousandth of all turns. Cuts by x are left to what draws it.
[[nodiscard]] std::vector<FaceDisc> face_discs(const SceneSource& source, const View& view, double angle,
                                               const FaceWindow& window);

// The same as an image, for views from afar: at least four pixels per fiber while that fits into most_px.
// Row 0 is at r_from; pixel (i, j) has its middle at x_from + (i + 1/2) px_mm, r_from + (j + 1/2) px_mm.
struct FaceImage {
  FaceWindow window;
  double px_mm = 1.0;
  std::size_t width = 0, height = 0;
  std::vector<Rgba> colour;         // alpha: share of the pixel that is fiber
  std::vector<std::uint32_t> node;  // of the disc that covers most of it; no_node between fibers
  // Of that node, 1 = on the barrel, 0 between fibers; empty unless colours tell layers. For pictures so small that the
  // colours of layers run together.
  std::vector<std::uint16_t> layer;
  double fiber_diameter_mm = 0.0;
};

struct FaceImageSettings {
  std::size_t most_px = 1U << 20U;
  double px_per_d = 4.0;
};

[[nodiscard]] FaceImage face_image(const SceneSource& source, const View& view, double angle,
                                   const FaceWindow& window, const FaceImageSettings& settings = {});

// The plane across the axis at x: rows are stations (grid rows of the shell), columns radii from r_from outward.
struct CrossFace {
  double x_mm = 0.0;
  bool faces_right = false;  // which side is seen: true at view.x_to, false at view.x_from
  double r_from = 0.0, px_mm = 1.0;
  std::size_t columns = 0, rows = 0;
  std::vector<Rgba> colour;         // alpha 0 between fibers
  std::vector<std::uint32_t> node;  // no_node between fibers; index = row * columns + column
};

[[nodiscard]] CrossFace cross_face(const SceneSource& source, const View& view, double x_mm, bool faces_right);

}  // namespace laywright
