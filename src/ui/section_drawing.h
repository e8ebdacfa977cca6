// The turns of an axial section as they are drawn: circles where they are large enough, else one image.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "desk/wound.h"
#include "scene/face.h"

namespace laywright {

struct SectionRequest {
  WoundPtr wound;
  View view;
  double angle_deg = 90.0;
  FaceWindow window;       // what is seen
  double px_per_mm = 1.0;  // of the drawing
  double circle_px = 5.0;  // from this diameter on a turn is a circle
};

struct SectionDrawing {
  std::weak_ptr<const Wound> wound;
  std::string key;    // of the view and the angle
  FaceWindow window;  // covered: more than was seen
  double px_per_mm = 0.0;
  std::vector<FaceDisc> discs;
  // Where there are no discs: an image of it.
  FaceImage image;
};

// What the drawing of a request will cover; no turns yet.
[[nodiscard]] SectionDrawing promise_of(const SectionRequest& request);

// May take long; safe on any thread.
[[nodiscard]] SectionDrawing draw_section(const SectionRequest& request);

// The drawing shows what is wished, as sharply.
[[nodiscard]] bool serves(const SectionDrawing& drawing, const SectionRequest& request);

}  // namespace laywright
