#include "app/desktop_window.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstring>
#include <utility>

#include <backends/imgui_impl_glfw.h>
#include <fmt/format.h>
#include <imgui.h>

#include "paint/offscreen_context.h"
#include "render/gl.h"
// GLFW must not bring headers of OpenGL of its own.
#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace laywright {
namespace {

std::string last_trouble() {
  const char* words = nullptr;
  glfwGetError(&words);
  return words != nullptr ? words : "no reason was given";
}

Issues no_window(const std::string& what) {
  Issue issue;
  issue.what = what;
  return {issue};
}

std::string named_key(int key) {
  constexpr std::array<std::pair<int, const char*>, 14> names{{{GLFW_KEY_LEFT, "Left"},
                                                               {GLFW_KEY_RIGHT, "Right"},
                                                               {GLFW_KEY_UP, "Up"},
                                                               {GLFW_KEY_DOWN, "Down"},
                                                               {GLFW_KEY_HOME, "Home"},
                                                               {GLFW_KEY_END, "End"},
                                                               {GLFW_KEY_PAGE_UP, "PageUp"},
                                                               {GLFW_KEY_PAGE_DOWN, "PageDown"},
                                                               {GLFW_KEY_ESCAPE, "Escape"},
                                                               {GLFW_KEY_SPACE, "Space"},
                                                               {GLFW_KEY_BACKSPACE, "Backspace"},
                                                               {GLFW_KEY_DELETE, "Delete"},
                                                               {GLFW_KEY_ENTER, "Enter"},
                                                               {GLFW_KEY_KP_ENTER, "Enter"}}};
  for (const auto& [code, name] : names) {
    if (code == key) return name;
  }
  if (key >= GLFW_KEY_F1 && key <= GLFW_KEY_F12) return fmt::format("F{}", key - GLFW_KEY_F1 + 1);
  return "";
}

// As the table of commands spells it; empty for keys that are part of others.
std::string spelled(int key, int scancode, int mods) {
  std::string name = named_key(key);
  if (name.empty()) {
    const char* printed = glfwGetKeyName(key, scancode);
    if (printed == nullptr) return "";
    name = printed;
    std::transform(name.begin(), name.end(), name.begin(), [](unsigned char c) { return std::toupper(c); });
    if (name == "=" && (mods & GLFW_MOD_SHIFT) != 0) {
      name = "+";
      mods &= ~GLFW_MOD_SHIFT;
    }
  }
  std::string chord;
  if ((mods & GLFW_MOD_CONTROL) != 0) chord += "Ctrl+";
  if ((mods & GLFW_MOD_SHIFT) != 0) chord += "Shift+";
  if ((mods & GLFW_MOD_ALT) != 0) chord += "Alt+";
  return chord + name;
}

void set_hints() {
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
  // A driver that knows it says when it was reset; one that does not leaves it out.
  glfwWindowHint(GLFW_CONTEXT_ROBUSTNESS, GLFW_LOSE_CONTEXT_ON_RESET);
  glfwWindowHint(GLFW_DEPTH_BITS, 0);
  glfwWindowHint(GLFW_STENCIL_BITS, 0);
}

// Drivers hand out functions that they do not have, so the names of the extensions count.
DesktopWindow::ResetStatus find_reset_status() {
  for (const auto& [extension, name] : {std::pair{"GL_KHR_robustness", "glGetGraphicsResetStatus"},
                                        std::pair{"GL_ARB_robustness", "glGetGraphicsResetStatusARB"}}) {
    if (glfwExtensionSupported(extension) == GLFW_FALSE) continue;
    const auto found = reinterpret_cast<DesktopWindow::ResetStatus>(glfwGetProcAddress(name));
    if (found != nullptr) return found;
  }
  return nullptr;
}

}  // namespace

Result<std::unique_ptr<DesktopWindow>> DesktopWindow::open(const WindowPlace& place) {
  std::unique_ptr<DesktopWindow> made(new DesktopWindow);
  if (glfwInit() == GLFW_FALSE) {
    return no_window(
        fmt::format("no window can be opened: {}. A display is needed (DISPLAY or WAYLAND_DISPLAY); "
                    "without one, laywright picture draws into a file",
                    last_trouble()));
  }
  if (Issues issues = made->make(place); !issues.empty()) return issues;
  return made;
}

Issues DesktopWindow::make(const WindowPlace& place) {
  set_hints();
  glfwWindowHint(GLFW_MAXIMIZED, place.maximized ? GLFW_TRUE : GLFW_FALSE);
  window_ = glfwCreateWindow(place.width, place.height, "Laywright", nullptr, nullptr);
  if (window_ == nullptr) {
    return no_window(
        fmt::format("the window has no OpenGL 3.3: {}. Install a driver for the graphics card, or "
                    "Mesa's software one (libgl1-mesa-dri); laywright lay does without",
                    last_trouble()));
  }
  if (place.x && place.y && !place.maximized) glfwSetWindowPos(window_, *place.x, *place.y);
  glfwMakeContextCurrent(window_);
  if (!load_gl(glfwGetProcAddress)) {
    return no_window(
        "the window's OpenGL is older than 3.3. Install a newer driver for the graphics card, or "
        "Mesa's software one (libgl1-mesa-dri)");
  }
  reset_status_ = find_reset_status();
  const auto* renderer = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
  software_ = renderer != nullptr && std::strstr(renderer, "llvmpipe") != nullptr;
  glfwSwapInterval(1);
  glfwSetWindowSizeLimits(window_, 480, 360, GLFW_DONT_CARE, GLFW_DONT_CARE);
  return {};
}

Issues DesktopWindow::make_anew() {
  const WindowPlace where = place();
  const bool was_full = before_full_.has_value();
  close();
  if (Issues issues = make(where); !issues.empty()) return issues;
  if (was_full) change_screen();
  return {};
}

bool DesktopWindow::opengl_is_lost() {
  // It is told once only: what is lost stays lost.
  lost_ = lost_ || (reset_status_ != nullptr && reset_status_() != GL_NO_ERROR);
  return lost_;
}

std::optional<PaintContext> DesktopWindow::second_context() {
  if (software_) {
    const auto held = std::make_shared<std::optional<OffscreenContext>>();
    return PaintContext{[held] {
                          Result<OffscreenContext> opened = OffscreenContext::open_beside_another();
                          if (opened.ok()) *held = std::move(opened).value();
                          return held->has_value();
                        },
                        [held] { held->reset(); }};
  }
  set_hints();
  glfwWindowHint(GLFW_VISIBLE, GLFW_FALSE);
  hidden_ = glfwCreateWindow(16, 16, "Laywright", nullptr, window_);
  if (hidden_ == nullptr) return std::nullopt;
  return PaintContext{[hidden = hidden_] {
                        glfwMakeContextCurrent(hidden);
                        return glfwGetCurrentContext() == hidden;
                      },
                      [] { glfwMakeContextCurrent(nullptr); }};
}

DesktopWindow::~DesktopWindow() {
  close();
  glfwTerminate();
}

void DesktopWindow::close() {
  if (hidden_ != nullptr) glfwDestroyWindow(hidden_);
  if (window_ != nullptr) glfwDestroyWindow(window_);
  hidden_ = window_ = nullptr;
  reset_status_ = nullptr;
  lost_ = false;
  before_full_.reset();
  title_.clear();
}

DesktopWindow::Inbox& DesktopWindow::inbox_of(GLFWwindow* window) {
  return *static_cast<Inbox*>(glfwGetWindowUserPointer(window));
}

void DesktopWindow::give_keys() {
  for (const KeyEvent& event : inbox_.keys.take_turn()) {
    if (const auto* letter = std::get_if<Letter>(&event)) {
      inbox_.news.input = true;
      ImGui_ImplGlfw_CharCallback(window_, letter->code);
      continue;
    }
    const KeyStroke& stroke = std::get<KeyStroke>(event);
    if (stroke.action != GLFW_RELEASE) {
      std::string keys = spelled(stroke.key, stroke.scancode, stroke.mods);
      if (!keys.empty()) inbox_.news.keys.push_back(std::move(keys));
    }
    inbox_.news.count_input();
    ImGui_ImplGlfw_KeyCallback(window_, stroke.key, stroke.scancode, stroke.action, stroke.mods);
  }
}

void DesktopWindow::serve_panels() {
  glfwSetWindowUserPointer(window_, &inbox_);
  glfwSetKeyCallback(window_, [](GLFWwindow* w, int key, int scancode, int action, int mods) {
    inbox_of(w).keys.add(KeyStroke{key, scancode, action, mods});
  });
  glfwSetCharCallback(window_, [](GLFWwindow* w, unsigned letter) { inbox_of(w).keys.add(Letter{letter}); });
  glfwSetMouseButtonCallback(window_, [](GLFWwindow* w, int button, int action, int mods) {
    inbox_of(w).news.count_input();
    ImGui_ImplGlfw_MouseButtonCallback(w, button, action, mods);
  });
  glfwSetScrollCallback(window_, [](GLFWwindow* w, double x, double y) {
    inbox_of(w).news.count_input();
    ImGui_ImplGlfw_ScrollCallback(w, x, y);
  });
  glfwSetCursorEnterCallback(window_, [](GLFWwindow* w, int entered) {
    inbox_of(w).news.input = true;
    ImGui_ImplGlfw_CursorEnterCallback(w, entered);
  });
  glfwSetWindowFocusCallback(window_, [](GLFWwindow* w, int focused) {
    inbox_of(w).news.input = true;
    ImGui_ImplGlfw_WindowFocusCallback(w, focused);
  });
  glfwSetCursorPosCallback(window_, [](GLFWwindow* w, double, double) { inbox_of(w).news.count_input(); });
  glfwSetWindowRefreshCallback(window_, [](GLFWwindow* w) { inbox_of(w).news.input = true; });
  glfwSetFramebufferSizeCallback(window_, [](GLFWwindow* w, int, int) { inbox_of(w).news.input = true; });
  glfwSetWindowContentScaleCallback(window_, [](GLFWwindow* w, float, float) { inbox_of(w).news.input = true; });
  glfwSetWindowCloseCallback(window_, [](GLFWwindow* w) {
    inbox_of(w).news.close = inbox_of(w).news.input = true;
    glfwSetWindowShouldClose(w, GLFW_FALSE);
  });
  glfwSetDropCallback(window_, [](GLFWwindow* w, int count, const char** files) {
    inbox_of(w).news.input = true;
    for (int i = 0; i < count; ++i) inbox_of(w).news.dropped_files.emplace_back(files[i]);
  });
}

void DesktopWindow::wait(double seconds) {
  if (!inbox_.keys.empty()) seconds = 0.0;
  if (seconds < 0.0) {
    glfwWaitEvents();
  } else if (seconds == 0.0) {
    glfwPollEvents();
  } else {
    glfwWaitEventsTimeout(seconds);
  }
  give_keys();
}

void DesktopWindow::wake() { glfwPostEmptyEvent(); }

WindowNews DesktopWindow::take_news() { return std::exchange(inbox_.news, {}); }

void DesktopWindow::change_screen() {
  if (before_full_) {
    const WindowPlace back = *std::exchange(before_full_, std::nullopt);
    glfwSetWindowMonitor(window_, nullptr, back.x.value_or(0), back.y.value_or(0), back.width, back.height,
                         GLFW_DONT_CARE);
    return;
  }
  GLFWmonitor* const monitor = glfwGetPrimaryMonitor();
  const GLFWvidmode* const mode = monitor != nullptr ? glfwGetVideoMode(monitor) : nullptr;
  if (mode == nullptr) return;
  before_full_ = place();
  glfwSetWindowMonitor(window_, monitor, 0, 0, mode->width, mode->height, mode->refreshRate);
}

WindowPlace DesktopWindow::place() const {
  if (before_full_) return *before_full_;
  WindowPlace place;
  int x = 0, y = 0;
  glfwGetWindowSize(window_, &place.width, &place.height);
  glfwGetWindowPos(window_, &x, &y);
  place.x = x;
  place.y = y;
  place.maximized = glfwGetWindowAttrib(window_, GLFW_MAXIMIZED) == GLFW_TRUE;
  return place;
}

float DesktopWindow::content_scale() const {
  float x = 1.0F, y = 1.0F;
  glfwGetWindowContentScale(window_, &x, &y);
  return std::clamp(x, 0.5F, 4.0F);
}

double DesktopWindow::pixels_per_unit() const {
  int width = 1, height = 1, pixels = 1, rows = 1;
  glfwGetWindowSize(window_, &width, &height);
  glfwGetFramebufferSize(window_, &pixels, &rows);
  return width > 0 ? static_cast<double>(pixels) / width : 1.0;
}

int DesktopWindow::height_px() const {
  int width = 0, height = 0;
  glfwGetFramebufferSize(window_, &width, &height);
  return height;
}

void DesktopWindow::set_title(const std::string& title) {
  if (title == title_) return;
  title_ = title;
  glfwSetWindowTitle(window_, title.c_str());
}

void DesktopWindow::show_frame() { glfwSwapBuffers(window_); }

}  // namespace laywright
