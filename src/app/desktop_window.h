// The window of the system: made with OpenGL 3.3, and what happens to it as plain values.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/key_queue.h"
#include "base/result.h"
#include "paint/painter.h"
#include "session/settings.h"

struct GLFWwindow;

namespace laywright {

// What has happened since it was last asked.
struct WindowNews {
  int inputs = 0;                 // strokes of keys and buttons, turns of the wheel, moves of the mouse
  bool input = false;             // anything that a panel could answer to
  bool close = false;             // the person wants it closed
  std::vector<std::string> keys;  // "Ctrl+Shift+S"
  std::vector<std::string> dropped_files;

  void count_input() {
    ++inputs;
    input = true;
  }
};

class DesktopWindow {
 public:
  using ResetStatus = unsigned (*)();

  // Errors: no display, or no OpenGL 3.3; with what would help.
  [[nodiscard]] static Result<std::unique_ptr<DesktopWindow>> open(const WindowPlace& place);
  ~DesktopWindow();
  // Makes the window anew, with another OpenGL, where the old one stood; all that lived in the old one must be gone, and
  // serve_panels() follows. Errors: as open(); there is no window then.
  [[nodiscard]] Issues make_anew();
  DesktopWindow(const DesktopWindow&) = delete;
  DesktopWindow& operator=(const DesktopWindow&) = delete;

  // From here on events reach the panels, too; Dear ImGui must have been told of the window.
  void serve_panels();

  // True once the graphics driver was reset, as after it hung: nothing is drawn any more.
  [[nodiscard]] bool opengl_is_lost();

  // Waits for something to happen; so long at most, or without end below 0. `wake` of any thread ends it.
  void wait(double seconds);
  static void wake();

  [[nodiscard]] WindowNews take_news();
  [[nodiscard]] WindowPlace place() const;
  [[nodiscard]] float content_scale() const;
  // Pixels to a unit of the window's coordinates, and the height in pixels.
  [[nodiscard]] double pixels_per_unit() const;
  [[nodiscard]] int height_px() const;
  void set_title(const std::string& title);
  void show_frame();
  // Takes the whole screen, or goes back to where it was.
  void change_screen();
  // An OpenGL for a painter on another thread: on a graphics card one that shares this window's textures; where the
  // processor draws one that has nothing to do with the window, whose frames would otherwise wait in the same queue.
  // None where it cannot be had. It must be left before the window ends.
  [[nodiscard]] std::optional<PaintContext> second_context();
  [[nodiscard]] GLFWwindow* handle() const { return window_; }
  [[nodiscard]] bool software() const { return software_; }

 private:
  DesktopWindow() = default;
  [[nodiscard]] Issues make(const WindowPlace& place);
  void close();

  struct Inbox {
    WindowNews news;
    KeyQueue keys;
  };
  void give_keys();
  static Inbox& inbox_of(GLFWwindow* window);

  GLFWwindow* window_ = nullptr;
  GLFWwindow* hidden_ = nullptr;  // for its context
  bool software_ = false;
  ResetStatus reset_status_ = nullptr;  // null: this OpenGL is never lost, or does not tell
  bool lost_ = false;
  std::optional<WindowPlace> before_full_;  // while it takes the whole screen
  std::string title_;
  Inbox inbox_;
};

}  // namespace laywright
