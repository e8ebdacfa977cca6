// Draws pictures of one wind offscreen: one, or many that differ little.
#pragma once

#include <optional>
#include <vector>

#include "render/frame_target.h"
#include "render/image.h"
#include "render/overlay.h"
#include "render/scene_renderer.h"
#include "scene/scene.h"

namespace laywright {

struct PictureStyle {
  bool figures = true;      // title, dimension lines, legend, scale bar
  bool title = true;        // among them
  bool diameter = false;    // counted below the title, beside length and turns
  double text_scale = 0.0;  // as of OverlaySettings
  bool transparent = false;
  std::vector<GuideInWay> guides;  // of all pictures of a film; else it is the picture's own
  // Each pixel is averaged from up to 16; fewer where this many would be exceeded.
  double most_fine_pixels = 24e6;
};

// Needs an OffscreenContext that outlives it. The source must outlive it, too.
class PictureMaker {
 public:
  PictureMaker(const SceneSource& source, const PictureStyle& style) : source_(source), style_(style) {}

  // A view that differs from the last one in its camera only needs no new scene. Throws std::runtime_error when the
  // driver refuses the size. `goes_on` is asked while it draws; where it says no, the image is empty.
  [[nodiscard]] Image draw(const View& view, const GoesOn& goes_on = {});

 private:
  void load(const View& view);

  const SceneSource& source_;
  PictureStyle style_;
  SceneRenderer renderer_;
  std::optional<View> view_;  // of the scene
  Scene scene_;
  std::optional<FrameTarget> target_;
};

}  // namespace laywright
