#include "paint/painter.h"

#ifdef __linux__
#include <sys/resource.h>
#endif

#include <algorithm>
#include <utility>

namespace laywright {
namespace {

// So long a picture stands before it is made fine.
constexpr std::chrono::milliseconds rest{100};

using Milliseconds = std::chrono::duration<double, std::milli>;

// Where the processor draws, the threads that do it take this one's rank: below the window's, which has little to do
// and must do it at once. Nothing is lost where the system refuses.
void give_way() {
#ifdef __linux__
  (void)setpriority(PRIO_PROCESS, 0, 4);
#endif
}

}  // namespace

Painter::Painter(std::optional<PaintContext> context, std::function<void()> wake, Drawer drawer)
    : context_(std::move(context)), wake_(std::move(wake)), drawer_(drawer), board_(rest) {
  if (context_)
    thread_ = Thread::start({"the picture", [this] { run(); }, [this](const Issue& why) { give_up(why); }});
}

Painter::~Painter() {
  if (!has_thread()) {
    clear_away(true);
    return;
  }
  {
    const std::lock_guard lock(mutex_);
    over_ = true;
  }
  news_.notify_one();
  thread_.reset();
}

std::size_t Painter::add() {
  const std::lock_guard lock(mutex_);
  places_.emplace(++last_place_, std::make_shared<Place>());
  return last_place_;
}

void Painter::remove(std::size_t picture) {
  {
    const std::lock_guard lock(mutex_);
    board_.forget(picture);
    if (const auto place = places_.find(picture); place != places_.end()) place->second->removed = true;
  }
  if (has_thread()) {
    news_.notify_one();
  } else {
    clear_away(false);
  }
}

void Painter::want(std::size_t picture, PaintOrder order) {
  {
    const std::lock_guard lock(mutex_);
    board_.want(picture, std::move(order), Clock::now());
  }
  news_.notify_one();
}

FinishedPicture* Painter::newest(std::size_t picture) {
  const std::lock_guard lock(mutex_);
  return places_.at(picture)->pictures.newest();
}

bool Painter::fresh(std::size_t picture) const {
  const std::lock_guard lock(mutex_);
  return places_.at(picture)->pictures.fresh();
}

bool Painter::unfinished(std::size_t picture) const {
  const std::lock_guard lock(mutex_);
  return board_.unfinished(picture);
}

void Painter::work() {
  if (has_thread()) return;
  std::optional<Board::Task> task;
  {
    const std::lock_guard lock(mutex_);
    if (trouble_.empty()) task = board_.next(Clock::now());
  }
  if (task) paint(*task);
}

std::optional<double> Painter::seconds_to_work() const {
  const std::lock_guard lock(mutex_);
  const std::optional<Clock::time_point> due = board_.next_due();
  if (has_thread() || !due || !trouble_.empty()) return std::nullopt;
  return std::max(0.0, std::chrono::duration<double>(*due - Clock::now()).count());
}

std::string Painter::trouble() const {
  const std::lock_guard lock(mutex_);
  return trouble_;
}

Painter::Times Painter::times() const {
  const std::lock_guard lock(mutex_);
  return times_;
}

void Painter::run() {
  give_way();
  if (!context_->enter()) {
    Issue none;
    none.what = "the graphics driver gives no second OpenGL";
    give_up(std::move(none));
    return;
  }
  // After a trouble it only waits for its end, so that what others hold of it stays.
  while (std::optional<Trouble> trouble = attempt("the picture", [&] { loop(); }))
    give_up(std::move(trouble->issue));
  clear_away(true);
  context_->leave();
}

void Painter::loop() {
  std::unique_lock lock(mutex_);
  while (!over_) {
    std::optional<Board::Task> task;
    if (trouble_.empty()) task = board_.next(Clock::now());
    if (!task) {
      const std::optional<Clock::time_point> due = board_.next_due();
      if (due && trouble_.empty()) {
        news_.wait_until(lock, *due);
      } else {
        news_.wait(lock);
      }
    }
    lock.unlock();
    clear_away(false);
    if (task) paint(*task);
    task.reset();  // what it holds may be large, and must not wait for the next
    lock.lock();
  }
}

void Painter::paint(const Board::Task& task) {
  std::shared_ptr<Place> place;
  {
    const std::lock_guard lock(mutex_);
    const auto found = places_.find(task.picture);
    if (over_ || found == places_.end() || found->second->removed) return;
    place = found->second;
  }
  const Clock::time_point begin = Clock::now();
  PassDone done;
  std::optional<Trouble> trouble = attempt("the picture", [&] {
    if (!place->pass_painter) place->pass_painter = std::make_unique<PassPainter>(drawer_);
    done = place->pass_painter->paint(task.order, task.pass, place->pictures.blank());
  });
  if (trouble) return give_up(std::move(trouble->issue));
  if (done.picture) place->pictures.finish();
  const double took_ms = Milliseconds(Clock::now() - begin).count();
  {
    const std::lock_guard lock(mutex_);
    board_.done(task, done.finest);
    ++times_.passes;
    times_.last_pass_ms = took_ms;
    times_.longest_pass_ms = std::max(times_.longest_pass_ms, took_ms);
  }
  if (done.picture) wake_();
}

// What was made in a context is released in it.
void Painter::clear_away(bool all) {
  std::map<std::size_t, std::shared_ptr<Place>> gone;
  const std::lock_guard lock(mutex_);
  for (auto i = places_.begin(); i != places_.end();) {
    if (all || i->second->removed) {
      gone.insert(places_.extract(i++));
    } else {
      ++i;
    }
  }
}

void Painter::give_up(Issue why) {
  {
    const std::lock_guard lock(mutex_);
    trouble_ = std::move(why.what);
  }
  wake_();
}

}  // namespace laywright
