// A 3D picture in the window: makes scenes in the background, has them painted, and shows what is painted.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "desk/wound.h"
#include "jobs/latest_job.h"
#include "paint/painter.h"

namespace laywright {

// Pixels of the window: of its lower left corner, and the size.
struct PixelBox {
  int x = 0, y = 0, width = 1, height = 1;
};

class DesktopPicture {
 public:
  // `wake` is called from another thread when a scene is ready. The painter lives longer.
  DesktopPicture(Painter& painter, std::function<void()> wake);
  ~DesktopPicture();
  DesktopPicture(const DesktopPicture&) = delete;
  DesktopPicture& operator=(const DesktopPicture&) = delete;

  // What is to be seen from now on; returns at once, and what was seen stays until the new is ready. `text_scale`: of
  // what is written; `explained`: as in Scene.
  void show(const WoundPtr& wound, const View& view, double text_scale, bool explained = true);

  // Puts the newest picture into the window. False where there is nothing yet.
  bool draw(const PixelBox& box);

  // True if the next show() or draw() would have something new.
  [[nodiscard]] bool stale() const;

  [[nodiscard]] bool busy() const;  // a scene is being made
  // How far the pull that draws the fiber off is computed, where the scene waits for its colours; none: it does not.
  [[nodiscard]] std::optional<double> colours_share() const;
  // Gives that up. What can be seen meanwhile: the colouring to go back to.
  [[nodiscard]] Colouring stop_colours();
  // Why the newest was not made; each trouble once. Empty: nothing wrong.
  [[nodiscard]] std::string take_trouble();
  // The one that is shown or about to be.
  [[nodiscard]] std::shared_ptr<const Scene> scene() const;
  // True when all that was wanted is painted, as fine as it gets.
  [[nodiscard]] bool finished() const;

 private:
  struct Made {
    WoundPtr wound;
    View view;  // that it was made for
    std::shared_ptr<const Scene> scene;
    std::shared_ptr<const CloseUp> close_up;
  };
  [[nodiscard]] bool colours_are_ready();
  void ask_for_scene();
  void ask_for_close_up();
  void take_fresh();
  void upload(const FinishedPicture& picture);

  Painter& painter_;
  std::size_t place_;
  std::function<void()> wake_;

  WoundPtr wound_;  // wanted
  View view_;
  bool explained_ = true;
  WoundPtr asked_wound_;
  std::optional<View> asked_view_;
  std::optional<Made> made_;

  Framebuffer source_ = Framebuffer::make();
  Texture own_;  // of sheets that are bytes
  int own_width_ = 0, own_height_ = 0;

  // The newest that is being made is a scene, not a close-up of one that there is.
  bool makes_scene_ = false;
  bool close_up_failed_ = false;  // of this scene; it is not tried again
  std::string trouble_;
  // The payoff that was asked for last.
  struct Colours {
    WoundPtr wound;
    DrawOff way = DrawOff::side;
    bool ready = false, failed = false;
  };
  std::optional<Colours> colours_;
  LatestJob<bool> colours_job_{"the colours of this wind"};
  LatestJob<Made> job_{"the picture of this wind"};
};

}  // namespace laywright
