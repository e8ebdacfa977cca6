// One picture while it is painted: what of its scene the graphics card holds, and the passes from a quick picture to
// a fine one. All calls need the context in which it was made.
#pragma once

#include <algorithm>
#include <memory>
#include <optional>

#include "render/close_up.h"
#include "render/finish.h"
#include "render/scene_renderer.h"
#include "scene/scene_source.h"

namespace laywright {

// A picture that is wanted. Nothing in it changes once it is ordered.
struct PaintOrder {
  std::shared_ptr<const SceneSource> source;
  std::shared_ptr<const Scene> scene;       // of the source
  std::shared_ptr<const CloseUp> close_up;  // of the scene
  View view;
  double text_scale = 1.0;

  [[nodiscard]] bool operator==(const PaintOrder&) const = default;
};

// What draws. The processor may make quick pictures coarse, and hands over bytes instead of textures.
enum class Drawer { graphics_card, processor };

struct PassDone {
  bool picture = false;  // there is something new to show
  bool finest = false;   // no pass of this order is left
};

class PassPainter {
 public:
  explicit PassPainter(Drawer drawer);

  // Pass 0 is a whole picture, quickly made; those after it add up to a fine one. Passes of an order come in their
  // order, but another order may come at any time. Throws std::runtime_error when the driver refuses the size.
  PassDone paint(const PaintOrder& order, int pass, FinishedPicture& picture);

  // Pixels drawn to a pixel of the picture, in one direction, in quick passes.
  [[nodiscard]] double quick_scale(const View& view) const;

 private:
  void load(const PaintOrder& order);
  void write_words(const PaintOrder& order);
  [[nodiscard]] Frame frame_of(const PaintOrder& order, int width, int height) const;
  void draw(const PaintOrder& order, const Frame& frame);
  void paint_quickly(const PaintOrder& order, FinishedPicture& picture);
  void add_fine(const PaintOrder& order, int pass);
  void learn(double quick_ms, const View& view);

  Drawer drawer_;
  SceneRenderer renderer_;
  std::unique_ptr<Finish> finish_;
  std::optional<Canvas> canvas_;
  PaintOrder loaded_;
  RenderTarget raw_;
  double scale_;           // of quick pictures, as fine as they can be in their time
  double words_ms_ = 0.0;  // that the words of a picture take: each one of a turning camera writes them anew
};

}  // namespace laywright
