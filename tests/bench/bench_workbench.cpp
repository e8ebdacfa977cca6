// How fast a workbench follows the hand: from an edit to the first build that can be shown, and to the full one; and
// how often the picture changes while a slider is dragged; and the longest that a call of the window's thread took. Medians of several edits; times by the clock, which
// other programs on the machine lengthen. Without a window: what drawing adds is measured where it is drawn.
#include <fmt/format.h>

#include <time.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <string>
#include <thread>
#include <vector>

#include "session/file_commands.h"
#include "session/plan_commands.h"
#include "session/workbench.h"

namespace {

using namespace laywright;
using Clock = std::chrono::steady_clock;

constexpr int edits = 15;

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

// Of the thread that asks: what other programs on the machine do does not count.
double processor_ms() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) * 1e-6;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

double greatest(const std::vector<double>& values) { return *std::max_element(values.begin(), values.end()); }

struct Edit {
  double to_first = 0.0, to_whole = 0.0, to_full = 0.0;  // ms
  Pass first;
};

class Bench {
 public:
  explicit Bench(const std::string& sample) : bench_(Workbench::Options{}) {
    if (!bench_.apply(cmd::open(sample))) {
      fmt::print(stderr, "{} cannot be opened\n", sample);
      std::exit(1);
    }
    wait([&] { return is_full(); });
  }

  // A pitch that is a little other; `wait_for_full`: until the last build is there.
  Edit edit(double pitch_mm, bool wait_for_full) {
    Edit result;
    const auto start = Clock::now();
    call([&] { bench_.apply(cmd::set_field("traverse.pitch", pitch_mm, 0)); });
    const auto is_new = [&] { return document().wound_is_current(); };
    wait(is_new);
    result.to_first = ms_since(start);
    result.first = bench_.wound()->pass;
    if (!wait_for_full) return result;
    wait([&] { return bench_.wound()->pass.whole(); });
    result.to_whole = ms_since(start);
    wait([&] { return is_full(); });
    result.to_full = ms_since(start);
    return result;
  }
  // An edit every 16 ms for two seconds, as a slider gives them. Returns the times between builds that were shown, ms.
  std::vector<double> drag(double pitch_mm) {
    constexpr int steps = 125;
    std::vector<double> between;
    WoundPtr shown = bench_.wound();
    auto last = Clock::now();
    for (int i = 0; i < steps; ++i) {
      const auto next = Clock::now() + std::chrono::milliseconds(16);
      call([&] { bench_.apply(cmd::set_field("traverse.pitch", pitch_mm * (1.0 + 1e-4 * i), 1)); });
      while (Clock::now() < next) {
        call([&] { bench_.poll(); });
        if (bench_.wound() != shown) {
          shown = bench_.wound();
          between.push_back(ms_since(last));
          last = Clock::now();
        }
        std::this_thread::sleep_for(std::chrono::microseconds(500));
      }
    }
    return between;
  }
  [[nodiscard]] double pitch() const { return document().state().draft.traverse.pitch_mm; }
  [[nodiscard]] const std::vector<double>& calls() const { return calls_; }
  [[nodiscard]] double longest_processor() const { return longest_processor_; }

 private:
  [[nodiscard]] const Document& document() const { return *bench_.active()->document; }
  [[nodiscard]] bool is_full() const {
    return bench_.wound() && document().wound_is_current() && bench_.wound()->pass.full();
  }

  template <class Call>
  void call(const Call& what) {
    const auto start = Clock::now();
    const double processor = processor_ms();
    what();
    calls_.push_back(ms_since(start));
    longest_processor_ = std::max(longest_processor_, processor_ms() - processor);
  }
  template <class Done>
  void wait(const Done& done) {
    while (!done()) {
      std::this_thread::sleep_for(std::chrono::microseconds(500));
      call([&] { bench_.poll(); });
    }
  }

  Workbench bench_;
  std::vector<double> calls_;  // ms that the window's thread was held up
  double longest_processor_ = 0.0;
};

void measure(const std::string& name) {
  Bench bench(fmt::format("{}/{}.lay.toml", LAYWRIGHT_SAMPLES, name));
  const double pitch = bench.pitch();
  std::vector<double> first, while_busy;
  Edit last;
  for (int i = 0; i < edits; ++i) {
    last = bench.edit(pitch * (1.0 + 0.001 * (i + 1)), i + 1 == edits);
    // The first edit finds nothing being laid; the others interrupt the full build.
    (i == 0 || i + 1 == edits ? first : while_busy).push_back(last.to_first);
  }
  fmt::print("{}\n", name);
  fmt::print("  edit to first build:  median {:.0f} ms, greatest {:.0f} ms, of {} edits that interrupt laying\n",
             median(while_busy), greatest(while_busy), while_busy.size());
  fmt::print("  that build:           fidelity {:.2f}, {:.0f} % of the wind\n", last.first.fidelity,
             100.0 * last.first.share);
  fmt::print("  to the whole wind:    {:.0f} ms; to the full build: {:.0f} ms\n", last.to_whole, last.to_full);
  const std::vector<double> between = bench.drag(pitch);
  if (between.empty()) {
    fmt::print("  while dragging:       no build was shown\n");
  } else {
    fmt::print("  while dragging:       a new build every {:.0f} ms, at the longest {:.0f} ms\n", median(between),
               greatest(between));
  }
  std::vector<double> calls = bench.calls();
  std::sort(calls.begin(), calls.end());
  fmt::print(
      "  the window's thread:  {} calls, median {:.3f} ms, 99 % within {:.2f} ms, longest {:.2f} ms by the clock, "
      "{:.2f} ms of processor time\n\n",
      calls.size(), median(calls), calls[calls.size() * 99 / 100], calls.back(), bench.longest_processor());
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<std::string> names(argv + 1, argv + argc);
  if (names.empty()) names = {"even", "pitch-too-fine", "long"};
  for (const std::string& name : names) measure(name);
  return 0;
}
