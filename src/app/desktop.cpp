#include "app/desktop.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <stdexcept>

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <fmt/format.h>
#include <imgui.h>

#include "app/build_picture.h"
#include "app/desktop_picture.h"
#include "app/desktop_state.h"
#include "app/desktop_window.h"
#include "app/exit_code.h"
#include "app/output.h"
#include "app/page_maker.h"
#include "app/panel_images.h"
#include "base/atomic_file.h"
#include "render/offscreen_context.h"
#include "ui/keys.h"
#include "ui/layout.h"
#include "ui/show_window.h"
#include "ui/style.h"
#include "ui/window.h"
#include "web/share_page.h"
#include "workbench/advice.h"

namespace laywright {
namespace {

using Clock = std::chrono::steady_clock;
using Milliseconds = std::chrono::duration<double, std::milli>;

// The panels need so many frames until they have answered to an input.
constexpr int frames_per_input = 3;

// So many turns of the loop, the newest, are told of in the state file.
constexpr std::size_t turns_told = 200;

// The samples stand beside the program, or in a folder above it.
std::string find_sample() {
  std::error_code error;
  std::filesystem::path folder = std::filesystem::read_symlink("/proc/self/exe", error).parent_path();
  for (int up = 0; up < 6 && !folder.empty(); ++up, folder = folder.parent_path()) {
    for (const char* place : {"samples", "share/laywright/samples"}) {
      const std::filesystem::path sample = folder / place / "even.lay.toml";
      if (std::filesystem::exists(sample, error)) return sample.string();
    }
  }
  return "";
}

Workbench::Options bench_options() {
  Workbench::Options options;
  options.folders = Folders::of_person();
  options.sample = find_sample();
  if (!options.sample.empty()) options.lessons = std::filesystem::path(options.sample).parent_path() / "lessons";
  options.wake = DesktopWindow::wake;
  if (!share_page_template().empty()) {
    options.make_page = [](const PageOrder& order, Progress& progress) {
      return make_share_page(order.plan_text(), order.plan, order.wound->source,
                             OffscreenContext::open_beside_another, progress);
    };
  }
  return options;
}

class Desktop {
 public:
  Desktop(const DesktopOptions& options, Clock::time_point begun)
      : options_(options), begun_(begun), bench_(bench_options()) {}

  ~Desktop() {
    picture_.reset();
    other_.reset();
    painter_.reset();  // before the window, whose second context it has
    images_.reset();
    if (panels_ready_) {
      ImGui_ImplOpenGL3_Shutdown();
      ImGui_ImplGlfw_Shutdown();
      ImGui::DestroyContext();
    }
  }

  int run();

 private:
  [[nodiscard]] bool open_window();
  void set_up_panels();
  void answer_news();
  [[nodiscard]] double waiting_time() const;
  void turn();
  void draw_panels();
  void give_pictures_their_places(const WindowLayout& layout);
  void show_to_others(const WindowLayout& layout, const Wound& wound);
  void draw_pictures(const WindowLayout& layout);
  void draw_one(DesktopPicture& picture, const Box2& box);
  void start_painter(bool on_a_thread);
  void mind_painter();
  void apply(Commands& commands);
  void match_style();
  void write_state();
  void keep_times(Clock::time_point turn_begun);
  [[nodiscard]] Theme theme() const;

  const DesktopOptions& options_;
  Clock::time_point begun_;
  std::unique_ptr<DesktopWindow> window_;  // before the workbench, whose threads wake it
  Workbench bench_;
  PanelState panels_;
  bool panels_ready_ = false;
  std::unique_ptr<PanelImages> images_;
  std::unique_ptr<Painter> painter_;
  bool painter_has_thread_ = false;
  std::unique_ptr<DesktopPicture> picture_, other_;
  WindowLayout layout_;
  Commands commands_;
  DesktopTimes times_;
  int frames_wanted_ = frames_per_input;
  bool leaves_ = false, was_compared_ = false;
  float scale_ = 0.0F;
  std::optional<Theme> theme_;
  std::string state_written_;
};

Theme Desktop::theme() const {
  return bench_.active() != nullptr ? bench_.active()->stage.view.theme : bench_.settings().view.theme;
}

bool Desktop::open_window() {
  WindowPlace place = bench_.settings().window;
  if (int width = 0, height = 0; std::sscanf(options_.size.c_str(), "%dx%d", &width, &height) == 2) {
    place = {std::clamp(width, 320, 16384), std::clamp(height, 240, 16384), 0, 0, false};
  }
  Result<std::unique_ptr<DesktopWindow>> opened = DesktopWindow::open(place);
  if (!opened) {
    print_issues(opened.issues());
    return false;
  }
  window_ = std::move(opened).value();
  return true;
}

void Desktop::set_up_panels() {
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.ConfigInputTextCursorBlink = false;  // nothing moves by itself: the window rests
  ImGui_ImplGlfw_InitForOpenGL(window_->handle(), false);
  window_->serve_panels();
  ImGui_ImplOpenGL3_Init("#version 330 core");
  panels_ready_ = true;
  images_ = std::make_unique<PanelImages>();
  panels_.show_image = [this](ImageSlot slot, const PanelImage& image) { return images_->show(slot, image); };
  panels_.wake = DesktopWindow::wake;
  panels_.paper_picture = picture_for_paper_beside_window;
  panels_.places.wanted = !options_.state_file.empty();
}

void Desktop::start_painter(bool on_a_thread) {
  picture_.reset();
  other_.reset();
  painter_.reset();
  std::optional<PaintContext> context;
  if (on_a_thread) context = window_->second_context();
  painter_has_thread_ = context.has_value();
  const Drawer drawer = window_->software() ? Drawer::processor : Drawer::graphics_card;
  painter_ = std::make_unique<Painter>(std::move(context), DesktopWindow::wake, drawer);
  picture_ = std::make_unique<DesktopPicture>(*painter_, DesktopWindow::wake);
}

// A painter that cannot go on is followed by one that paints here. What ails that one as well is nothing a window can
// do without.
void Desktop::mind_painter() {
  const std::string trouble = painter_->trouble();
  if (trouble.empty()) return;
  if (!painter_has_thread_) throw std::runtime_error(trouble);
  start_painter(false);
}

void Desktop::match_style() {
  const float scale = window_->content_scale() * static_cast<float>(bench_.settings().scale);
  const bool new_scale = scale != scale_;
  if (!new_scale && theme_ == theme()) return;
  scale_ = scale;
  theme_ = theme();
  apply_style(*theme_, scale_);
  if (!new_scale) return;
  const Letters letters = load_letters(scale_);
  ImGui::GetIO().FontDefault = letters.plain;
  panels_.strong = letters.strong;
  panels_.reading = letters.reading;
  panels_.reading_strong = letters.reading_strong;
  panels_.title = letters.title;
  panels_.figure = letters.figure;
  panels_.scale = scale_;
  ImGui_ImplOpenGL3_DestroyFontsTexture();
  ImGui_ImplOpenGL3_CreateFontsTexture();
}

void Desktop::apply(Commands& commands) {
  for (const Command& command : commands) bench_.apply(command);
  if (!commands.empty()) frames_wanted_ = std::max(frames_wanted_, 2);
  commands.clear();
}

void Desktop::answer_news() {
  const WindowNews news = window_->take_news();
  if (news.input) frames_wanted_ = frames_per_input;
  take_input({news.keys, news.dropped_files, news.close}, bench_, panels_, commands_);
  apply(commands_);
}

double Desktop::waiting_time() const {
  if (frames_wanted_ > 0) return 0.0;
  double seconds = -1.0;
  const auto sooner = [&](std::optional<double> other) {
    if (!other) return;
    const double wait = std::max(0.0, *other);
    seconds = seconds < 0.0 ? wait : std::min(seconds, wait);
  };
  sooner(bench_.seconds_to_next_poll());
  sooner(seconds_to_next_frame(panels_));
  if (painter_) sooner(painter_->seconds_to_work());
  return seconds < 0.0 ? seconds : std::max(0.001, seconds);
}

void Desktop::give_pictures_their_places(const WindowLayout& layout) {
  const double px = window_->pixels_per_unit();
  const auto pixels = [px](float units) { return std::max(1, static_cast<int>(std::lround(units * px))); };
  const Desk* desk = bench_.active();
  if (desk == nullptr) return;
  if (bench_.showing() && bench_.wound()) return show_to_others(layout, *bench_.wound());
  const int width = pixels(layout.picture.width), height = pixels(layout.picture.height);
  if (desk->stage.view.width_px != width || desk->stage.view.height_px != height) {
    bench_.apply(cmd::SetPictureSize{width, height});
    // A picture that has become half as wide shows the whole spool, too.
    if (layout.other.has_value() != was_compared_ && bench_.wound()) bench_.apply(cmd::FitView{});
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

void Desktop::turn() {
  match_style();
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  prepare_keys(panels_);
  ImGui::NewFrame();
  const Shown shown{picture_->scene(), picture_->busy()};
  layout_ = draw_window(bench_, shown, panels_, commands_);
  ImGui::Render();
  apply(commands_);
  give_pictures_their_places(layout_);
  painter_->work();
  draw_pictures(layout_);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  window_->show_frame();
  const Desk* desk = bench_.active();
  window_->set_title(desk == nullptr ? "Laywright"
                                     : fmt::format("{}{} - Laywright", desk->document->dirty() ? "* " : "",
                                                   desk->document->title()));
  if (bench_.wound() && !bench_.lesson() && !bench_.showing())
    bench_.set_layout(layout_words(panels_));  // before that, not all tabs are there
  if (std::exchange(panels_.changes_screen, false)) window_->change_screen();
  leaves_ = panels_.quits;
}

void Desktop::keep_times(Clock::time_point turn_begun) {
  const Clock::time_point now = Clock::now();
  ++times_.frames;
  times_.last_turn_ms = Milliseconds(now - turn_begun).count();
  times_.turns_ms.push_back(times_.last_turn_ms);
  if (times_.turns_ms.size() > turns_told) times_.turns_ms.erase(times_.turns_ms.begin());
  if (times_.frames == 1) times_.first_frame_ms = Milliseconds(now - begun_).count();
  if (times_.first_picture_ms > 0.0) times_.longest_turn_ms = std::max(times_.longest_turn_ms, times_.last_turn_ms);
  if (times_.first_picture_ms == 0.0 && times_.pictures > 0) {
    times_.first_picture_ms = Milliseconds(now - begun_).count();
  }
}

void Desktop::write_state() {
  if (options_.state_file.empty()) return;
  const Shown shown{picture_->scene(), picture_->busy()};
  times_.painter = painter_->times();
  times_.painted = picture_->finished() && (!other_ || other_->finished());
  const std::string text = state_json(bench_, panels_, shown, times_);
  // There is nobody to tell of a failure but the test, which sees no file.
  if (text != state_written_) (void)write_file_atomically(options_.state_file, text);
  state_written_ = text;
}

int Desktop::run() {
  if (!open_window()) return exit_not_written;
  set_up_panels();
  start_painter(true);
  take_layout(panels_, bench_.settings().layout);
  bench_.start(options_.plans);
  while (!leaves_) {
    window_->wait(waiting_time());
    const Clock::time_point turn_begun = Clock::now();
    answer_news();
    const Desk* desk = bench_.active();
    const bool laying = desk != nullptr && (desk->document->laying().busy || desk->advice->busy());
    if (bench_.poll() || laying || picture_->stale() || (other_ && other_->stale())) {
      // A scroll bar that news brings moves the words beside it in the next turn only.
      frames_wanted_ = std::max(frames_wanted_, 2);
    }
    if (painter_->seconds_to_work().value_or(1.0) <= 0.0) frames_wanted_ = std::max(frames_wanted_, 1);
    mind_painter();
    if (seconds_to_next_frame(panels_).value_or(1.0) <= 0.0) frames_wanted_ = std::max(frames_wanted_, 2);
    if (frames_wanted_ <= 0) continue;
    --frames_wanted_;
    turn();
    keep_times(turn_begun);
    write_state();
  }
  bench_.set_window(window_->place());
  return exit_done;
}

}  // namespace

int run_desktop(const DesktopOptions& options) {
  const Clock::time_point begun = Clock::now();
  Desktop desktop(options, begun);
  return desktop.run();
}

}  // namespace laywright
