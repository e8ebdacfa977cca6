// The picture on the page's canvas ("#picture"), by WebGL 2; words and figures go onto the canvas over it.
#pragma once

#include <memory>
#include <optional>

#include "desk/wound.h"
#include "render/close_up.h"
#include "render/scene_renderer.h"

namespace laywright {

class Picture {
 public:
  // Throws std::runtime_error when the browser gives no WebGL 2.
  Picture();

  // The scene of that view, made anew only where it must be.
  [[nodiscard]] const Scene& scene_of(const WoundPtr& wound, const View& view);

  // Has the browser do what it can before there is a wind.
  void make_ready() const { renderer_.make_ready(); }

  // quick: a quarter of the pixels, and coarse as in Frame, for a processor that draws. fine: twice as fine and averaged,
  // for a view at rest.
  enum class Pass { quick, plain, fine };
  void draw(const WoundPtr& wound, const View& view, Pass pass);

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
  // Room for so many pixels, and for no more than `most`, which it once needed.
  void fit(glm::ivec2 size, glm::ivec2 most);

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
