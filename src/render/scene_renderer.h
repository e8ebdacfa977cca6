// Draws scenes with OpenGL 3.3 core (or WebGL 2). All calls need the context that was current when it was made.
//
//   SceneRenderer renderer;
//   renderer.load(scene);                       when the scene has changed
//   renderer.load(close_up, scene);             when it has, or the camera has left what it covers
//   renderer.draw(target, scene, view, style);  for each frame
//   target.read();                              or target.id_at(x, y)
#pragma once

#include <functional>

#include "render/canvas.h"
#include "render/close_up.h"
#include "render/face_layer.h"
#include "render/frame_target.h"
#include "render/mark_layer.h"
#include "render/shell_layer.h"
#include "render/solid_layer.h"
#include "render/strand_layer.h"
#include "render/words_layer.h"

namespace laywright {

// Told of the share of a picture that is drawn, 0 to 1; false: the rest is not wanted any more.
using GoesOn = std::function<bool(double share)>;

struct FrameStyle {
  bool transparent = false;         // no ground: what is not drawn stays clear
  const Canvas* overlay = nullptr;  // of the view's size; drawn over the picture
  double veil_opacity = 0.22;       // of faded layers over the chosen ones
  double flange_opacity = 0.16;     // of those that are see-through
};

class SceneRenderer {
 public:
  // `ids`: the ids of what stands under a pixel are drawn, too.
  explicit SceneRenderer(bool ids = true);

  // Has the driver compile what every picture needs, before there is a scene.
  void make_ready() const;

  void load(const Scene& scene);
  void load(const CloseUp& close_up, const Scene& scene);

  // Draws the scene that was loaded, as the view's camera sees it, into the target, whose size must be the view's.
  // `sphere`: what the depth must span (sphere_around). With `goes_on` the frame is drawn band by band, the same in every
  // pixel, and it is asked after each; false when it said no, and the target then holds anything.
  bool draw(const FrameTarget& target, const Scene& scene, const View& view, const Sphere& sphere,
            const FrameStyle& style = {}, const GoesOn& goes_on = {});

  // The same into the framebuffer that is bound, of the frame's size, and without the overlay. With ids it has a second
  // attachment for them.
  void draw_into(const Frame& frame, const FrameStyle& style) const;

 private:
  [[nodiscard]] bool draw_bands(const Frame& frame, const FrameStyle& style, const GoesOn& goes_on) const;
  void draw_opaque(const Frame& frame) const;
  void draw_ground(const Frame& frame) const;
  void draw_over(const Frame& frame, const FrameStyle& style) const;

  Program ground_{"cover", "ground"}, average_{"cover", "average"};
  VertexArray nothing_ = VertexArray::make();
  bool ids_;
  ShellLayer shell_, veil_;
  StrandLayer strands_;
  FaceLayer faces_;
  SolidLayer solids_;
  MarkLayer marks_;
  WordsLayer words_;
  SolidLayer::Wind wind_;
  bool has_veil_ = false;
  double share_ = 0.0;  // of the close-up
};

}  // namespace laywright
