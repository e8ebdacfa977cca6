// Paints pictures for a window on a thread of its own, so that the window never waits for one: it says what it wants
// and shows the newest picture that is finished. What is wanted is painted quickly first; when it stands still, finer
// and finer. Where there is no second OpenGL or no thread, painting is done a pass at a time on the window's thread.
#pragma once

#include <condition_variable>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "jobs/thread.h"
#include "paint/order_board.h"
#include "paint/pass_painter.h"
#include "paint/picture_exchange.h"

namespace laywright {

// The OpenGL of a painter. Where a graphics card draws, its textures are the window's, too.
struct PaintContext {
  std::function<bool()> enter;  // makes it current on the thread that calls; false: it cannot be had
  std::function<void()> leave;  // and lets it go again, on the same thread
};

class Painter {
 public:
  using Clock = std::chrono::steady_clock;

  // `wake` is called from another thread when there is something new. Without a context, and where the system gives no
  // thread, work() paints, and the context that is current then must be current when the painter ends.
  Painter(std::optional<PaintContext> context, std::function<void()> wake, Drawer drawer);
  // Ends after the pass that is being painted.
  ~Painter();
  Painter(const Painter&) = delete;
  Painter& operator=(const Painter&) = delete;

  // A place for a picture.
  [[nodiscard]] std::size_t add();
  void remove(std::size_t picture);

  void want(std::size_t picture, PaintOrder order);

  // The newest finished picture; null while there is none. It stays as it is until the next call.
  [[nodiscard]] FinishedPicture* newest(std::size_t picture);
  [[nodiscard]] bool fresh(std::size_t picture) const;
  [[nodiscard]] bool unfinished(std::size_t picture) const;

  [[nodiscard]] bool has_thread() const { return thread_.has_value(); }
  // For painters without a thread: paints the next pass if one is due.
  void work();
  // In how many seconds work() has something to do; none: nothing, or a thread does it.
  [[nodiscard]] std::optional<double> seconds_to_work() const;

  // Why nothing more will be painted; empty while all is well.
  [[nodiscard]] std::string trouble() const;

  struct Times {
    std::uint64_t passes = 0;
    double last_pass_ms = 0.0, longest_pass_ms = 0.0;
  };
  [[nodiscard]] Times times() const;

 private:
  using Board = OrderBoard<PaintOrder>;
  // Of one picture. It belongs to whoever paints.
  struct Place {
    PictureExchange<FinishedPicture> pictures;
    std::unique_ptr<PassPainter> pass_painter;
    bool removed = false;
  };

  void run();
  void loop();
  void paint(const Board::Task& task);
  void clear_away(bool all);
  void give_up(Issue why);

  std::optional<PaintContext> context_;
  std::function<void()> wake_;
  Drawer drawer_;

  mutable std::mutex mutex_;
  std::condition_variable news_;
  Board board_;
  std::map<std::size_t, std::shared_ptr<Place>> places_;
  std::size_t last_place_ = 0;
  Times times_;
  std::string trouble_;
  bool over_ = false;

  std::optional<Thread> thread_;  // last, so that all else is there when it starts; without one, work() paints
};

}  // namespace laywright
