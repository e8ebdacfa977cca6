// What of the window lives in its OpenGL: the panels' letters, the painter, the pictures.
#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include "app/desktop_loop.h"
#include "app/output.h"
#include "session/camera_commands.h"
#include "ui/show_window.h"

namespace laywright {
namespace {

// A driver that is reset again so soon will be so for ever.
constexpr std::chrono::seconds soonest_renewal{5};

Issues driver_fails() {
  Issue issue;
  issue.what =
      "the graphics driver was reset twice within a few seconds, so there is no window any more. Unsaved work is "
      "kept and offered at the next start; should it happen again, start with LIBGL_ALWAYS_SOFTWARE=1, which draws "
      "without the graphics card";
  return {issue};
}

}  // namespace

void Desktop::enter_opengl() {
  ImGui_ImplGlfw_InitForOpenGL(window_->handle(), false);
  window_->serve_panels();
  ImGui_ImplOpenGL3_Init("#version 330 core");
  images_ = std::make_unique<PanelImages>();
  start_painter(true);
}

void Desktop::leave_opengl() {
  picture_.reset();
  other_.reset();
  painter_.reset();  // before the window, whose second context it has
  if (!images_) return;
  images_.reset();
  ImGui_ImplOpenGL3_Shutdown();
  ImGui_ImplGlfw_Shutdown();
}

// The driver was reset. Nothing that lived in its OpenGL can be used any more, so all of it is made anew.
bool Desktop::renew_window() {
  bench_.keep_unsaved();
  const bool again = renewed_ && Clock::now() - *renewed_ < soonest_renewal;
  Issues trouble;
  if (again) {
    trouble = driver_fails();
  } else {
    leave_opengl();
    trouble = window_->make_anew();
  }
  if (!trouble.empty()) {
    print_issues(trouble);
    return false;
  }
  enter_opengl();
  renewed_ = Clock::now();  // from here on: making it can take a slow machine as long
  bench_.tell(Severity::warning,
              "The graphics driver was reset. The window has been made anew, and no work is lost.");
  frames_wanted_ = frames_per_input;
  return true;
}

void Desktop::start_painter(bool on_a_thread) {
  picture_.reset();
  other_.reset();
  painter_.reset();
  std::optional<PaintContext> context;
  if (on_a_thread) context = window_->second_context();
  const Drawer drawer = window_->software() ? Drawer::processor : Drawer::graphics_card;
  painter_ = std::make_unique<Painter>(std::move(context), DesktopWindow::wake, drawer);
  picture_ = std::make_unique<DesktopPicture>(*painter_, DesktopWindow::wake);
}

// A painter that cannot go on is followed by one that paints here. What ails that one as well is nothing a window can
// do without.
void Desktop::mind_painter() {
  for (DesktopPicture* picture : {picture_.get(), other_.get()}) {
    if (picture == nullptr) continue;
    if (std::string trouble = picture->take_trouble(); !trouble.empty()) {
      bench_.tell(Severity::error, std::move(trouble));
      frames_wanted_ = std::max(frames_wanted_, 2);
    }
  }
  const std::string trouble = painter_->trouble();
  if (trouble.empty()) return;
  if (!painter_->has_thread() && window_->opengl_is_lost()) return;  // the next turn sees to it
  if (!painter_->has_thread()) throw std::runtime_error(trouble);
  start_painter(false);
}

void Desktop::give_pictures_their_places(const WindowLayout& layout) {
  const double px = window_->pixels_per_unit();
  const auto pixels = [px](float units) { return std::max(1, static_cast<int>(std::lround(units * px))); };
  const Desk* desk = bench_.active();
  if (desk == nullptr) return;
  if (bench_.showing() && bench_.wound()) return show_to_others(layout, *bench_.wound());
  const int width = pixels(layout.picture.width), height = pixels(layout.picture.height);
  if (desk->stage.view.width_px != width || desk->stage.view.height_px != height) {
    bench_.apply(cmd::set_picture_size(width, height));
    // A picture that has become half as wide shows the whole spool, too.
    if (layout.other.has_value() != was_compared_ && bench_.wound()) bench_.apply(cmd::fit_view());
    was_compared_ = layout.other.has_value();
    frames_wanted_ = std::max(frames_wanted_, 2);
  }
  // In a small picture, small letters leave room for the spool.
  const double letters = scale_ * std::clamp(std::min(layout.picture.width / (46.0 * ImGui::GetFontSize()),
                                                      layout.picture.height / (32.0 * ImGui::GetFontSize())),
                                             0.72, 1.0);
  picture_->show(bench_.wound(), bench_.active()->stage.view, letters);
  if (!layout.other) {
    other_.reset();
    return;
  }
  if (!other_) other_ = std::make_unique<DesktopPicture>(*painter_, DesktopWindow::wake);
  View view = bench_.other_stage().view;
  view.width_px = pixels(layout.other->width);
  view.height_px = pixels(layout.other->height);
  other_->show(bench_.other_wound(), view, letters);
}

// The document's own view is left as it is.
void Desktop::show_to_others(const WindowLayout& layout, const Wound& wound) {
  const double px = window_->pixels_per_unit();
  View view = bench_.active()->stage.view;
  view.width_px = std::max(1, static_cast<int>(std::lround(layout.picture.width * px)));
  view.height_px = std::max(1, static_cast<int>(std::lround(layout.picture.height * px)));
  view = view_of_showing(*bench_.showing(), wound, view, show_room);
  picture_->show(bench_.wound(), view, scale_, false);
  other_.reset();
}

void Desktop::draw_one(DesktopPicture& picture, const Box2& box) {
  const double px = window_->pixels_per_unit();
  const auto pixels = [px](float units) { return static_cast<int>(std::lround(units * px)); };
  const int width = std::max(1, pixels(box.width)), height = std::max(1, pixels(box.height));
  if (picture.draw({pixels(box.x), window_->height_px() - pixels(box.y) - height, width, height})) ++times_.pictures;
}

void Desktop::draw_pictures(const WindowLayout& layout) {
  const ImVec4 ground = ImGui::GetStyleColorVec4(ImGuiCol_WindowBg);
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const double px = window_->pixels_per_unit();
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
  glDisable(GL_SCISSOR_TEST);
  glViewport(0, 0, static_cast<int>(size.x * px), static_cast<int>(size.y * px));
  glClearColor(ground.x, ground.y, ground.z, 1.0F);
  glClear(GL_COLOR_BUFFER_BIT);
  if (bench_.active() == nullptr) return;
  draw_one(*picture_, layout.picture);
  if (other_ && layout.other) draw_one(*other_, *layout.other);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

}  // namespace laywright
