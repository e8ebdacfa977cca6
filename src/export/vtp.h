// The fiber for VTK and what reads its files: PolyData in XML (.vtp), arrays appended raw, little-endian.
//
// One polyline per layer; consecutive ones share a point, so that the fiber goes on without a break. Places in mm, as in
// scene/coordinates.h, as 32-bit floats: their step is 2^-23 of the value. Arrays at the points:
//   turn         from the start of the wind                                        Float64
//   length_m     of fiber from the start of the wind                               Float64
//   layer        1 = on the barrel                                                 Int32
//   direction    of the stroke: 1 to the right, -1 to the left                     Int8
//   support      0 nothing (it bridges), 1 barrel, 2 turn, 3 valley, 4 flange      UInt8
//   rise_d       over the layer below, in fiber diameters; NaN where there is none   Float32
//   gap_d        to the next turn of the layer, in fiber diameters; NaN likewise     Float32
//   tension_N    where the plan gives tension and take-up control                  Float32
// rise_d and gap_d as in scene/colouring.h.
#pragma once

#include <ostream>

#include "base/progress.h"
#include "base/result.h"
#include "export/thinned_line.h"
#include "scene/scene_source.h"

namespace laywright {

struct VtpSettings {
  LayerRange layers;
  // How far the lines may lie off the fiber, mm; 0: every station is a point. A file that would be larger than
  // `most_bytes` is refused.
  double tolerance_mm = 0.0;
  double most_bytes = 1e9;
};

// What will be written.
struct VtpLine {
  ThinnedLine line;
  std::size_t points = 0;
  double bytes = 0.0;
};

[[nodiscard]] Result<VtpLine> plan_vtp(const SceneSource& source, const VtpSettings& settings);

// False, and incomplete, when cancelled.
bool write_vtp(std::ostream& out, const SceneSource& source, const VtpLine& line, Progress& progress);

}  // namespace laywright
