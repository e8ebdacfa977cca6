// The window's program: what it has, and how one turn follows the other.
#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <string>

#include "app/desktop.h"
#include "app/desktop_bench.h"
#include "app/desktop_picture.h"
#include "app/desktop_state.h"
#include "app/desktop_window.h"
#include "app/panel_images.h"
#include "paint/painter.h"
#include "session/workbench.h"
#include "ui/layout.h"
#include "ui/window.h"

namespace laywright {

class Desktop {
 public:
  using Clock = std::chrono::steady_clock;

  Desktop(const DesktopOptions& options, Clock::time_point begun)
      : options_(options), begun_(begun), bench_(bench_of_window(options.entries)) {}
  ~Desktop();
  Desktop(const Desktop&) = delete;
  Desktop& operator=(const Desktop&) = delete;

  // Until the window is closed; an exit code.
  [[nodiscard]] int run();

 private:
  // The panels need so many frames until they have answered to an input.
  static constexpr int frames_per_input = 3;

  [[nodiscard]] bool open_window();
  void set_up_panels();
  void answer_news();
  void mind_colours();
  [[nodiscard]] std::optional<double> seconds_to_progress() const;
  [[nodiscard]] double waiting_time() const;
  void turn();
  void apply(Commands& commands);
  void match_style();
  void write_state();
  void keep_times(Clock::time_point turn_begun);
  [[nodiscard]] Theme theme() const;

  // What of it lives in OpenGL: desktop_drawing.cpp.
  void enter_opengl();
  void leave_opengl();
  [[nodiscard]] bool renew_window();
  void start_painter(bool on_a_thread);
  void mind_painter();
  void give_pictures_their_places(const WindowLayout& layout);
  void show_to_others(const WindowLayout& layout, const Wound& wound);
  void draw_pictures(const WindowLayout& layout);
  void draw_one(DesktopPicture& picture, const Box2& box);

  const DesktopOptions& options_;
  Clock::time_point begun_, last_turn_;
  std::unique_ptr<DesktopWindow> window_;  // before the workbench, whose threads wake it
  Workbench bench_;
  PanelState panels_;
  bool panels_ready_ = false;
  std::unique_ptr<PanelImages> images_;
  std::unique_ptr<Painter> painter_;
  std::unique_ptr<DesktopPicture> picture_, other_;
  WindowLayout layout_;
  Commands commands_;
  DesktopTimes times_;
  int frames_wanted_ = frames_per_input;
  bool leaves_ = false, was_compared_ = false, progressed_ = false;
  std::optional<Clock::time_point> renewed_;  // the window, last
  float scale_ = 0.0F;
  std::optional<Theme> theme_;
  std::string state_written_;
};

}  // namespace laywright
