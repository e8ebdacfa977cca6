// What is written over the picture: signs of findings, dimension lines with their figures, legend, scale bar, caption.
#pragma once

#include <string>
#include <vector>

#include "render/canvas.h"
#include "scene/scene.h"

namespace laywright {

// A guide that words keep clear of, with its free fiber.
struct GuideInWay {
  GuidePose pose;
  double eye_radius_mm = 0.0;  // as of GuideSolid
};

struct OverlaySettings {
  std::string title, subtitle;  // upper left; empty: none
  bool legend = true;           // where the view has one
  bool scale_bar = true;
  double text_scale = 0.0;  // 1: letters of 13 px; 0: so that they suit the picture's size
  // That of a picture, or those of all pictures of a film, so that no word moves in it. A window, where the guide goes round
  // the spool, has none of them: its words would jump about.
  std::vector<GuideInWay> guides;
};

// The view gives the camera and the picture's size; the scene all that is shown. `scale_bar` is that of the view.
void draw_overlay(Canvas& canvas, const Scene& scene, const View& view, const OverlaySettings& settings = {});

}  // namespace laywright
