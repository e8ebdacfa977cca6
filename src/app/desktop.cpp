#include "app/desktop.h"

#include <algorithm>
#include <exception>
#include <new>
#include <utility>

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <fmt/format.h>
#include <imgui.h>

#include "app/build_picture.h"
#include "app/desktop_loop.h"
#include "app/exit_code.h"
#include "app/output.h"
#include "app/ranges.h"
#include "base/atomic_file.h"
#include "session/advice.h"
#include "session/view_commands.h"
#include "ui/keys.h"
#include "ui/style.h"

namespace laywright {
namespace {

using Milliseconds = std::chrono::duration<double, std::milli>;

// So many turns of the loop, the newest, are told of in the state file.
constexpr std::size_t turns_told = 200;

}  // namespace

Desktop::~Desktop() {
  leave_opengl();
  if (panels_ready_) ImGui::DestroyContext();
}

Theme Desktop::theme() const {
  return bench_.active() != nullptr ? bench_.active()->stage.view.theme : bench_.settings().view.theme;
}

bool Desktop::open_window() {
  WindowPlace place = bench_.settings().window;
  if (const auto size = read_pair<int>(options_.size, 'x')) {
    place = {std::max(size->first, 320), std::max(size->second, 240), 0, 0, false};
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
  panels_ready_ = true;
  panels_.show_image = [this](ImageSlot slot, const PanelImage& image) { return images_->show(slot, image); };
  panels_.wake = DesktopWindow::wake;
  panels_.paper_picture = [](const SceneSource& source) {
    Progress to_its_end;
    return picture_for_paper_beside_window(source, to_its_end);
  };
  panels_.places.wanted = !options_.state_file.empty();
}

void Desktop::match_style() {
  const float scale = window_->content_scale() * static_cast<float>(bench_.settings().scale);
  const bool new_scale = scale != scale_;
  if (!new_scale && theme_ == theme()) return;
  scale_ = scale;
  theme_ = theme();
  apply_style(*theme_, scale_);
  if (!new_scale) return;
  const Fonts fonts = load_fonts(scale_);
  if (fonts.missing) {
    // Without signs that those letters do not have.
    bench_.tell(Severity::warning,
                "The font DejaVu Sans is not on this system, or cannot be read: what stands here is written in a "
                "plain one, with a question mark for each sign that it lacks. Install the package fonts-dejavu-core "
                "and start again.");
  }
  ImGui::GetIO().FontDefault = fonts.plain;
  panels_.strong = fonts.strong;
  panels_.reading = fonts.reading;
  panels_.reading_strong = fonts.reading_strong;
  panels_.title = fonts.title;
  panels_.figure = fonts.figure;
  panels_.scale = scale_;
  ImGui_ImplOpenGL3_DestroyFontsTexture();
  ImGui_ImplOpenGL3_CreateFontsTexture();
}

void Desktop::apply(Commands& commands) {
  for (const Command& command : commands) bench_.apply(command);
  if (!commands.empty()) frames_wanted_ = std::max(frames_wanted_, 2);
  commands.clear();
}

// What a picture waits for can be given up; it goes back to the colours that it has.
void Desktop::mind_colours() {
  if (std::exchange(panels_.colours.stops, false) && picture_) {
    const Colouring before = picture_->stop_colours();
    if (other_) (void)other_->stop_colours();
    bench_.apply(cmd::set_colouring(before));
    frames_wanted_ = std::max(frames_wanted_, 2);
  }
  panels_.colours.share = picture_->colours_share();
  if (!panels_.colours.share && other_) panels_.colours.share = other_->colours_share();
}

void Desktop::answer_news() {
  const WindowNews news = window_->take_news();
  if (news.input) frames_wanted_ = frames_per_input;
  times_.inputs += static_cast<std::uint64_t>(news.inputs);
  mind_colours();
  take_input({news.keys, news.dropped_files, news.close}, bench_, panels_, commands_);
  apply(commands_);
  mind_colours();
}

std::optional<double> Desktop::seconds_to_progress() const {
  // As often as a bar seems to move evenly: more frames would take the processor from what it tells of.
  constexpr double step_s = 1.0 / 30.0;
  if (!bench_.shows_progress()) return std::nullopt;
  return std::max(0.0, step_s - std::chrono::duration<double>(Clock::now() - last_turn_).count());
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
  sooner(seconds_to_progress());
  sooner(seconds_to_next_frame(panels_));
  if (painter_) sooner(painter_->seconds_to_work());
  constexpr double next_share_s = 0.1;
  if (panels_.colours.share) sooner(next_share_s);
  return seconds < 0.0 ? seconds : std::max(0.001, seconds);
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
  mind_colours();
  give_pictures_their_places(layout_);
  painter_->work();
  draw_pictures(layout_);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  window_->show_frame();
  const Desk* desk = bench_.active();
  window_->set_title(desk == nullptr ? "Laywright"
                                     : fmt::format("{}{} - Laywright", desk->document->dirty() ? "* " : "",
                                                   desk->document->name()));
  if (bench_.wound() && !bench_.lesson() && !bench_.showing())
    bench_.set_layout(layout_words(panels_));  // before that, not all tabs are there
  if (std::exchange(panels_.changes_screen, false)) window_->change_screen();
  leaves_ = panels_.quits;
}

void Desktop::keep_times(Clock::time_point turn_begun) {
  const Clock::time_point now = Clock::now();
  last_turn_ = now;
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
  times_.rests = frames_wanted_ <= 0 && !bench_.shows_progress() && !painter_->seconds_to_work() &&
                 !panels_.colours.share && !seconds_to_next_frame(panels_);
  const std::string text = state_json(bench_, panels_, shown, times_);
  // There is nobody to tell of a failure but the test, which sees no file.
  if (text != state_written_) (void)write_file_atomically(options_.state_file, text);
  state_written_ = text;
}

int Desktop::run() {
  if (!open_window()) return exit_not_written;
  set_up_panels();
  enter_opengl();
  take_layout(panels_, bench_.settings().layout);
  bench_.start(options_.plans);
  while (!leaves_) {
    window_->wait(waiting_time());
    const Clock::time_point turn_begun = Clock::now();
    if (window_->opengl_is_lost() && !renew_window()) return exit_not_written;
    answer_news();
    const bool news = bench_.poll();
    const bool progress_ended = std::exchange(progressed_, bench_.shows_progress()) && !progressed_;
    if (news || progress_ended || panels_.colours.share || picture_->stale() || (other_ && other_->stale())) {
      // A tab that news opens has its words in the third turn only.
      frames_wanted_ = std::max(frames_wanted_, frames_per_input);
    }
    if (seconds_to_progress().value_or(1.0) <= 0.0) frames_wanted_ = std::max(frames_wanted_, 1);
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

int run_desktop(const DesktopOptions& options) {
  const Desktop::Clock::time_point begun = Desktop::Clock::now();
  try {
    Desktop desktop(options, begun);
    return desktop.run();
  } catch (const std::bad_alloc&) {
    tell(
        "error: there is too little memory for the window and its plans. Unsaved work is kept and offered at the "
        "next start; close other programs, or make the wind shorter\n");
  } catch (const std::exception& error) {
    tell(fmt::format("error: the window cannot go on: {}. Unsaved work is kept and offered at the next start\n",
                     error.what()));
  }
  return exit_not_written;
}

}  // namespace laywright
