// Speed and memory of laying the long sample (25 km), on one thread, beside a copy of its own result in memory; and
// of two winds on two threads. Times on a shared machine are noisy: what counts are the ratios of medians taken in
// one run, printed last. They are of processor time, which waiting for other programs does not lengthen; for the two
// threads the time on the clock is given, too.
#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstring>
#include <map>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include "lay/lay.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;

constexpr int repetitions = 5;
constexpr double frictions[] = {0.3, 0.5, 0.6};
constexpr const char* copy_name = "copy long";
constexpr const char* in_turn_name = "two winds in turn";
constexpr const char* at_once_name = "two winds at once";

PlanDraft long_draft() {
  Result<Plan> plan = load_plan(LAYWRIGHT_SAMPLES "/long.lay.toml");
  if (!plan.ok()) throw std::runtime_error(to_text(plan.issues().front()));
  return plan.value().draft();
}

Build laid(const PlanDraft& draft) {
  Progress progress;
  return lay(check(draft).value(), {}, progress).value();
}

// 1 km: what a study lays many of.
PlanDraft short_draft() {
  PlanDraft draft = long_draft();
  draft.wind.length_mm = 1e6;
  return draft;
}

void lay_long(benchmark::State& state, double friction) {
  PlanDraft draft = long_draft();
  draft.fiber.friction = friction;
  std::size_t stations = 0;
  for (auto _ : state) stations = laid(draft).nodes.size();
  state.counters["stations"] = static_cast<double>(stations);
}

// As many bytes as the build of the long sample has.
void copy_long(benchmark::State& state, std::size_t bytes) {
  const std::vector<char> from(bytes, 1);
  std::vector<char> to(bytes, 2);
  for (auto _ : state) {
    std::memcpy(to.data(), from.data(), bytes);
    benchmark::DoNotOptimize(to.data());
    benchmark::ClobberMemory();
  }
}

void two_in_turn(benchmark::State& state) {
  const PlanDraft draft = short_draft();
  for (auto _ : state) {
    benchmark::DoNotOptimize(laid(draft).hash());
    benchmark::DoNotOptimize(laid(draft).hash());
  }
}

void two_at_once(benchmark::State& state) {
  const PlanDraft draft = short_draft();
  for (auto _ : state) {
    std::uint64_t other = 0;
    std::thread thread([&] { other = laid(draft).hash(); });
    const std::uint64_t one = laid(draft).hash();
    thread.join();
    if (one != other) state.SkipWithError("two threads laid different bits");
  }
}

struct Times {
  double processor = 0.0, clock = 0.0;  // s
};

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

// Keeps each repetition's times, for medians.
class Medians : public benchmark::ConsoleReporter {
 public:
  Medians() : ConsoleReporter(isatty(STDOUT_FILENO) == 1 ? OO_ColorTabular : OO_Tabular) {}

  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration || run.error_occurred) continue;
      const std::string& name = run.run_name.function_name;
      const auto iterations = static_cast<double>(run.iterations);
      processor_[name].push_back(run.cpu_accumulated_time / iterations);
      clock_[name].push_back(run.real_accumulated_time / iterations);
      const auto stations = run.counters.find("stations");
      if (stations != run.counters.end()) stations_[name] = stations->second;
    }
  }
  [[nodiscard]] bool has(const std::string& name) const { return clock_.count(name) > 0; }
  // Precondition: has(name).
  [[nodiscard]] Times of(const std::string& name) const {
    return {median(processor_.at(name)), median(clock_.at(name))};
  }
  [[nodiscard]] double stations(const std::string& name) const { return stations_.at(name); }

 private:
  std::map<std::string, std::vector<double>> processor_, clock_;
  std::map<std::string, double> stations_;
};

double peak_bytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return 1024.0 * static_cast<double>(usage.ru_maxrss);
}

struct Memory {
  double stations = 0.0, stored = 0.0, peak = 0.0;  // bytes
};

// In a process of its own, so that its peak is that of laying alone.
Memory memory_of_laying(const PlanDraft& draft) {
  int ends[2];
  if (pipe(ends) != 0) throw std::runtime_error("no pipe");
  const pid_t child = fork();
  if (child == 0) {
    const double before = peak_bytes();
    const Build build = laid(draft);
    const Memory memory{static_cast<double>(build.nodes.size()), static_cast<double>(build.nodes.bytes()),
                        peak_bytes() - before};
    const bool written = write(ends[1], &memory, sizeof memory) == sizeof memory;
    _exit(written ? 0 : 1);
  }
  Memory memory;
  const bool read_all = read(ends[0], &memory, sizeof memory) == sizeof memory;
  waitpid(child, nullptr, 0);
  close(ends[0]);
  close(ends[1]);
  if (!read_all) throw std::runtime_error("the process that measures memory failed");
  return memory;
}

std::string name_of(double friction) { return fmt::format("lay long, friction {}", friction); }

void print_speed(const Medians& medians, const Memory& memory) {
  if (!medians.has(copy_name)) return;
  const double copy = medians.of(copy_name).processor / memory.stations * 1e9;
  for (const double friction : frictions) {
    const std::string name = name_of(friction);
    if (!medians.has(name)) continue;
    const double seconds = medians.of(name).processor;
    const double stations = medians.stations(name);
    const double each = seconds / stations * 1e9;
    fmt::print("  {}: {:.3g} s for {:.3g} M stations, {:.0f} ns each; copied in {:.2f} ns each; ratio {:.0f}\n",
               name, seconds, stations * 1e-6, each, copy, each / copy);
  }
}

void print_threads(const Medians& medians) {
  if (!medians.has(in_turn_name) || !medians.has(at_once_name)) return;
  const Times in_turn = medians.of(in_turn_name);
  const Times at_once = medians.of(at_once_name);
  fmt::print(
      "  two winds on two threads: {:.2f} times as fast by the clock, {:.2f} times with two cores to themselves\n",
      in_turn.clock / at_once.clock, 2.0 * in_turn.processor / at_once.processor);
}

void print(const Medians& medians, const Memory& memory) {
  fmt::print("\nmedians of this run\n");
  print_speed(medians, memory);
  fmt::print("  memory: {:.2f} bytes per station stored, {:.2f} at the peak of laying, ratio {:.2f}\n",
             memory.stored / memory.stations, memory.peak / memory.stations, memory.peak / memory.stored);
  print_threads(medians);
}

}  // namespace

int main(int argc, char** argv) {
  const Memory memory = memory_of_laying(long_draft());
  const auto bytes = static_cast<std::size_t>(memory.stored);
  const auto add = [](const std::string& name, auto&& body) {
    benchmark::RegisterBenchmark(name.c_str(), body)
        ->Unit(benchmark::kMillisecond)
        ->MeasureProcessCPUTime()
        ->UseRealTime()
        ->Repetitions(repetitions);
  };
  for (const double friction : frictions) {
    add(name_of(friction), [friction](benchmark::State& state) { lay_long(state, friction); });
  }
  add(copy_name, [bytes](benchmark::State& state) { copy_long(state, bytes); });
  add(in_turn_name, two_in_turn);
  add(at_once_name, two_at_once);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
  Medians medians;
  benchmark::RunSpecifiedBenchmarks(&medians);
  print(medians, memory);
  benchmark::Shutdown();
  return 0;
}
