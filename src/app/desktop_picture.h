// A 3D picture in the window: makes scenes on a thread of its own, draws them, and draws again only what has changed.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>

#include "render/overlay.h"
#include "render/scene_renderer.h"
#include "workbench/worker.h"
#include "workbench/wound.h"

namespace laywright {

class DesktopPicture {
 public:
  using Clock = std::chrono::steady_clock;

  // `wake` is called from another thread when a scene is ready. `software`: the processor draws.
  DesktopPicture(std::function<void()> wake, bool software);
  ~DesktopPicture();
  DesktopPicture(const DesktopPicture&) = delete;
  DesktopPicture& operator=(const DesktopPicture&) = delete;

  // What is to be seen from now on; returns at once, and what was seen stays until the new is ready. `text_scale`: of
  // what is written.
  void show(const WoundPtr& wound, const View& view, double text_scale);

  // Draws into the window, the picture's lower left corner at x, y, in pixels. False where there is nothing yet.
  bool draw(int x, int y);

  // True if the next draw() would show something else than the last.
  [[nodiscard]] bool stale() const;
  // After how many seconds a finer picture of the same should be drawn; none: it is as fine as it gets.
  [[nodiscard]] std::optional<double> seconds_to_finer() const;

  [[nodiscard]] bool busy() const;  // a scene is being made
  [[nodiscard]] std::shared_ptr<const Scene> scene() const;
  [[nodiscard]] double last_draw_ms() const { return last_draw_ms_; }

 private:
  struct Made {
    WoundPtr wound;
    View view;  // that it was made for
    std::shared_ptr<const Scene> scene;
    std::shared_ptr<const CloseUp> close_up;
  };
  struct Shared {
    std::mutex mutex;
    std::optional<Made> fresh;
    int scenes_waiting = 0, close_ups_waiting = 0;
  };

  void ask_for_scene();
  void ask_for_close_up();
  void take_fresh();
  void render(int factor);
  [[nodiscard]] int factor_now() const;

  std::function<void()> wake_;
  bool software_;
  std::shared_ptr<Shared> shared_ = std::make_shared<Shared>();

  WoundPtr wound_;  // wanted
  View view_;
  double text_scale_ = 1.0;
  WoundPtr asked_wound_;
  std::optional<View> asked_view_;
  std::optional<Made> made_;  // loaded

  std::unique_ptr<SceneRenderer> renderer_;
  std::unique_ptr<FrameTarget> target_;
  std::optional<View> drawn_;
  bool redraw_ = true;
  int drawn_factor_ = 0;
  Clock::time_point moved_at_ = Clock::now();
  double last_draw_ms_ = 0.0;

  Worker worker_;  // last, so that all else is there when it ends
};

}  // namespace laywright
