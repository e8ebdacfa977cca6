// All that is to be drawn of a view, as plain data. No graphics library is needed to make or to test it.
//
// A scene depends on everything in a view but the camera and the picture's size (the scale bar alone depends on
// these): turning the spool needs no new scene. What the close-up needs is asked for by window: face_discs (face.h) and
// make_strands (strands.h).
#pragma once

#include <optional>
#include <vector>

#include "scene/camera.h"
#include "scene/colouring.h"
#include "scene/dimensions.h"
#include "scene/face.h"
#include "scene/guide_pose.h"
#include "scene/layer_numbers.h"
#include "scene/lit.h"
#include "scene/marks.h"
#include "scene/material.h"
#include "scene/pick.h"
#include "scene/shell.h"
#include "scene/spool_solid.h"
#include "scene/strands.h"

namespace laywright {

struct CutFace {
  double angle = 0.0;
  bool looks_onward =
      false;  // its outward side looks towards rising angles (the face where a removed sector begins)
  FaceImage image;
};

struct LayPoint {
  double x_mm = 0.0, r_mm = 0.0, angle = 0.0;
  Vec3 place{0.0, 0.0, 0.0};
};

struct Scene {
  Shell shell;
  std::optional<Shell> veil;  // of the layers over the chosen ones, faded

  std::vector<Sector> removed;            // shell, veil and marks: left out at these angles
  double x_from_mm = 0.0, x_to_mm = 0.0;  // and outside of these
  std::vector<CutFace> faces;
  std::vector<CrossFace> cross_faces;

  SpoolSolid spool;
  bool flanges_see_through = false;  // both; the one between the eye and the wind always is (sight.h)
  Rgba spool_colour;
  std::vector<LayerNumber> layer_numbers;  // on the faces of cuts
  Sheen sheen;                             // of the fiber
  Sheen spool_sheen;

  std::vector<Mark> marks;
  std::vector<std::uint8_t> lit;  // texels of the shell where findings show (lit.h)
  std::vector<DimensionLine> dimensions;
  AxisMark axis;
  ScaleBar scale_bar;
  Legend legend;
  LayPoint lay_point;               // where the wind ends in this view
  std::optional<GuideSolid> guide;  // there, while the wind is not at its end
  Theme theme = Theme::light;
  bool explained = true;  // with axis, lay point, legend and scale; without them it is for looking at alone
};

[[nodiscard]] Scene make_scene(const SceneSource& source, const View& view);

}  // namespace laywright
