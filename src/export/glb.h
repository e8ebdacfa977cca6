// A build as a solid model: glTF 2.0 in one binary file (GLB), with KHR_mesh_quantization unless floats are wanted.
//
// Units m, right-handed, X along the spool's axis, Y up at the start of the wind (scene/coordinates.h). Nodes: "Spool"
// with "Barrel", "Left flange" and "Right flange"; "Fiber" with "Layer 1" and so on, each of its own step, and of a material
// of that name with the layer's colour in pictures. The spool's flange thickness and bore are estimates (scene/spool_solid.h).
#pragma once

#include <ostream>
#include <string>

#include "base/progress.h"
#include "export/glb_fit.h"
#include "scene/scene_source.h"

namespace laywright {

struct GlbFacts {
  std::size_t first_layer = 1, last_layer = 1;
  int sides = 6;
  double step_mm = 0.0;       // of the coarsest layer
  double deviation_mm = 0.0;  // of the tube's surface from the build's, at most: line, sides and step together
  std::string note;           // what was reduced; empty when nothing was
};

struct Glb {
  std::string contents;  // JSON, padded to four bytes
  std::string bytes;     // of the binary part, padded to four bytes
  GlbFacts facts;

  [[nodiscard]] std::size_t size() const { return contents.size() + bytes.size() + 28; }
};

// Errors: as fit_glb; the file would be larger than glTF can be (4 GiB). Incomplete when cancelled.
[[nodiscard]] Result<Glb> make_glb(const SceneSource& source, const GlbSettings& settings, Progress& progress);

void write_glb(std::ostream& out, const Glb& glb);

}  // namespace laywright
