// What is to be painted, picture by picture: the newest order counts, and an order is painted in passes, each finer
// than the one before. No thread and no OpenGL of its own: whoever uses it from several threads guards it.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <utility>

namespace laywright {

// `Order` compares with ==.
template <class Order>
class OrderBoard {
 public:
  using Clock = std::chrono::steady_clock;

  // The first pass of an order is due at once, the others when it has stood for so long: a picture that moves is not
  // made fine in vain.
  explicit OrderBoard(Clock::duration rest) : rest_(rest) {}

  struct Task {
    std::size_t picture = 0;
    std::uint64_t number = 0;  // of the order
    int pass = 0;
    Order order;
  };

  // What is wanted from now on. The same as before changes nothing; anything else takes its place and starts again.
  void want(std::size_t picture, Order order, Clock::time_point now) {
    const auto standing = entries_.find(picture);
    if (standing != entries_.end() && standing->second.order == order) return;
    // A picture that is ordered again before it was painted has waited since the first time: so of several that move,
    // each has its turn.
    const bool waits = standing != entries_.end() && standing->second.pass == 0;
    const Clock::time_point since = waits ? standing->second.waits_since : now;
    entries_.insert_or_assign(picture, Entry{std::move(order), ++numbers_, now, since, 0, false});
  }
  void forget(std::size_t picture) { entries_.erase(picture); }

  // What is due: first passes before finer ones, and the order that has waited longest among these.
  [[nodiscard]] std::optional<Task> next(Clock::time_point now) const {
    const auto found = foremost();
    if (found == entries_.end() || due(found->second) > now) return std::nullopt;
    const Entry& entry = found->second;
    return Task{found->first, entry.number, entry.pass, entry.order};
  }
  // When there will be something due; none: not before something else is wanted.
  [[nodiscard]] std::optional<Clock::time_point> next_due() const {
    const auto found = foremost();
    if (found == entries_.end()) return std::nullopt;
    return due(found->second);
  }

  // A pass is painted; `finest`: there is no finer one. It does not count for an order that came in the meantime.
  void done(const Task& task, bool finest) {
    const auto found = entries_.find(task.picture);
    if (found == entries_.end()) return;
    Entry& entry = found->second;
    if (entry.number == task.number) {
      entry.pass = task.pass + 1;
      entry.finest = finest;
    } else {
      entry.waits_since = entry.wanted;
    }
  }

  // True while the finest pass of a picture's order is not painted.
  [[nodiscard]] bool unfinished(std::size_t picture) const {
    const auto found = entries_.find(picture);
    return found != entries_.end() && !found->second.finest;
  }

 private:
  struct Entry {
    Order order;
    std::uint64_t number = 0;
    Clock::time_point wanted;
    Clock::time_point waits_since;  // for its first pass
    int pass = 0;                   // the next
    bool finest = false;
  };

  [[nodiscard]] Clock::time_point due(const Entry& entry) const {
    return entry.pass == 0 ? entry.waits_since : entry.wanted + rest_;
  }
  [[nodiscard]] auto foremost() const {
    auto best = entries_.end();
    for (auto i = entries_.begin(); i != entries_.end(); ++i) {
      if (i->second.finest) continue;
      if (best == entries_.end() || before(i->second, best->second)) best = i;
    }
    return best;
  }
  [[nodiscard]] bool before(const Entry& a, const Entry& b) const {
    if ((a.pass == 0) != (b.pass == 0)) return a.pass == 0;
    return due(a) < due(b);
  }

  Clock::duration rest_;
  std::map<std::size_t, Entry> entries_;
  std::uint64_t numbers_ = 0;
};

}  // namespace laywright
