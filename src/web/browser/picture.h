// The picture on the page's canvas ("#picture"), by WebGL 2; words and figures go onto the canvas over it.
#pragma once

#include <memory>
#include <optional>

#include "render/close_up.h"
#include "render/scene_renderer.h"
#include "workbench/wound.h"

namespace laywright {

class Picture {
 public:
  // Throws std::runtime_error when the browser gives no WebGL 2.
  Picture();

  // The scene of that view, made anew only where it must be.
  [[nodiscard]] const Scene& scene_of(const WoundPtr& wound, const View& view);

  // `fine`: drawn twice as fine and averaged, for a view at rest. `coarse`: as in Frame.
  void draw(const WoundPtr& wound, const View& view, bool fine, bool coarse);

 private:
  struct Context {
    Context();
    ~Context();
    Context(const Context&) = delete;
    Context& operator=(const Context&) = delete;
    std::intptr_t handle;
  };
  struct Target {
    int width = 0, height = 0;
    Texture colours;
    Renderbuffer depth;
    Framebuffer framebuffer;
  };
  void fit(int width, int height);

  Context context_;  // first: all else needs it
  SceneRenderer renderer_{false};
  Target target_;
  WoundPtr wound_;  // of the scene
  std::optional<View> view_;
  Scene scene_;
  CloseUp close_up_;
  bool loaded_ = false, near_loaded_ = false;
};

}  // namespace laywright
