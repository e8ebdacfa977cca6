#include "app/watch.h"

#include <pthread.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <string>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "figures/figures.h"

namespace laywright {
namespace {

using Clock = std::chrono::steady_clock;

// The thread that waits for signals is woken by this one when the work is over.
constexpr int wake_up = SIGUSR1;

sigset_t watched_signals() {
  sigset_t set;
  sigemptyset(&set);
  for (const int signal : {SIGINT, SIGTERM, wake_up}) sigaddset(&set, signal);
  return set;
}

std::string bar(const std::string& stage, double share, double elapsed_s) {
  constexpr int cells = 30;
  share = std::clamp(share, 0.0, 1.0);
  const int full = static_cast<int>(share * cells);
  std::string text =
      fmt::format("{:<9} [{:#<{}}{:.<{}}] {:>5}", stage, "", full, "", cells - full, percent_text(share, 0));
  // An earlier guess would jump about.
  if (share > 0.02) text += fmt::format("  about {} left", duration_text(elapsed_s * (1.0 - share) / share));
  return text;
}

class Bar {
 public:
  void show(const char* stage, int plan, int plans, double share) {
    if (!terminal_ || stage == nullptr) return;
    const std::string words = plans > 1 ? fmt::format("plan {} of {}, {}", plan, plans, stage) : stage;
    if (words != stage_) {
      stage_ = words;
      since_ = Clock::now();
    }
    const double elapsed_s = std::chrono::duration<double>(Clock::now() - since_).count();
    fmt::print(stderr, "\r{}\x1b[K", bar(stage_, share, elapsed_s));
    std::fflush(stderr);
    shown_ = true;
  }
  void erase() {
    if (!shown_) return;
    fmt::print(stderr, "\r\x1b[K");
    std::fflush(stderr);
    shown_ = false;
  }

 private:
  bool terminal_ = ::isatty(STDERR_FILENO) == 1;
  bool shown_ = false;
  std::string stage_;
  Clock::time_point since_;
};

}  // namespace

Watch::Watch() {
  const sigset_t watched = watched_signals();
  pthread_sigmask(SIG_BLOCK, &watched, &before_);
  thread_ = Thread::start({"the progress bar", [this] { run(); }, {}});
  if (!thread_) pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

Watch::~Watch() {
  if (!thread_) return;
  over_ = true;
  pthread_kill(thread_->handle(), wake_up);
  thread_.reset();
  pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

void Watch::begin(const char* stage) {
  progress_.report(0.0);
  stage_ = stage;
}

void Watch::begin_plan(int number, int of) {
  plans_ = of;
  plan_ = number;
}

void Watch::run() {
  const sigset_t watched = watched_signals();
  const timespec between_frames{0, 100'000'000};
  Bar bar;
  while (!over_) {
    const int signal = sigtimedwait(&watched, nullptr, &between_frames);
    if (signal == SIGINT || signal == SIGTERM) progress_.cancel();
    if (signal < 0) bar.show(progress_.cancelled() ? "stopping" : stage_.load(), plan_, plans_, progress_.share());
  }
  bar.erase();
}

}  // namespace laywright
