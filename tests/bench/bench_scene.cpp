// Speed of making scenes: of the long sample (25 km, 12 million nodes or so) and of its first kilometre. What counts
// is that the times of both are alike: a picture costs what is seen, not what was wound. Times on a shared machine are
// noisy; the ratios printed last are of medians of processor time in one run.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <numbers>
#include <stdexcept>
#include <string>
#include <vector>

#include "lay/lay.h"
#include "plan/plan_file.h"
#include "scene/scene.h"

namespace {

using namespace laywright;

constexpr int repetitions = 5;

std::unique_ptr<SceneSource> source_of(double length_mm) {
  Result<Plan> plan = load_plan(LAYWRIGHT_SAMPLES "/long.lay.toml");
  if (!plan.ok()) throw std::runtime_error(to_text(plan.issues().front()));
  PlanDraft draft = plan.value().draft();
  draft.wind.length_mm = length_mm;
  Plan wanted = check(draft).value();
  Progress progress;
  auto build = std::make_shared<const Build>(lay(wanted, {}, progress).value());
  auto measured = std::make_shared<const Measurements>(measure(wanted, *build, progress));
  return std::make_unique<SceneSource>(wanted, build, measured);
}

// Ends of the wind all over it, so that no shell that is kept is met exactly.
class Scrub {
 public:
  explicit Scrub(const SceneSource& source) : turns_(source.build().turns) {}
  double next() {
    constexpr double golden = 0.6180339887;
    share_ += golden;
    if (share_ >= 1.0) share_ -= 1.0;
    return turns_ * (0.1 + 0.9 * share_);
  }

 private:
  double turns_, share_ = 0.0;
};

Ray ray_at(const View& view, int i) {
  return ray_through(view, 0.37 * view.width_px + i % 97, 0.31 * view.height_px + i % 89);
}

// Each: one thing that a person waits for.
using Job = std::function<void(const SceneSource&, benchmark::State&)>;

void shell_job(const SceneSource& source, benchmark::State& state, Colouring colouring) {
  Scrub scrub(source);
  View view;
  view.colouring = colouring;
  Shell shell;
  for (auto _ : state) {
    view.until_turn = scrub.next();
    shell = make_shell(source, view, std::move(shell));
    benchmark::DoNotOptimize(shell.node.data());
  }
}

std::map<std::string, Job> jobs() {
  std::map<std::string, Job> all;
  all["newest nodes"] = [](const SceneSource& source, benchmark::State& state) {
    Scrub scrub(source);
    std::vector<std::uint32_t> nodes;
    for (auto _ : state) {
      const auto end = static_cast<std::size_t>(scrub.next() * static_cast<double>(source.stations()));
      nodes = source.shells().newest(source.build(), end, std::move(nodes));
      benchmark::DoNotOptimize(nodes.data());
    }
  };
  const std::map<std::string, Colouring> colourings{
      {"layer", Colouring::layer},  {"direction", Colouring::direction}, {"rise", Colouring::rise},
      {"gap", Colouring::gap},      {"height", Colouring::height},       {"support", Colouring::support},
      {"length", Colouring::length}};
  for (const auto& [name, colouring] : colourings) {
    all["shell by " + name] = [colouring = colouring](const SceneSource& source, benchmark::State& state) {
      shell_job(source, state, colouring);
    };
  }
  all["openness"] = [](const SceneSource& source, benchmark::State& state) {
    const Shell shell = make_shell(source, {});
    for (auto _ : state) benchmark::DoNotOptimize(openness_of(shell.grid, shell.radius_mm, source.d()));
  };
  all["face, far"] = [](const SceneSource& source, benchmark::State& state) {
    double angle = 0.0;
    for (auto _ : state) benchmark::DoNotOptimize(face_image(source, {}, angle += 0.1, whole_face(source)));
  };
  all["face, close"] = [](const SceneSource& source, benchmark::State& state) {
    const FaceWindow window{40.0, 45.0, 75.0, 77.0};
    double angle = 0.0;
    for (auto _ : state) benchmark::DoNotOptimize(face_discs(source, {}, angle += 0.1, window));
  };
  all["strands, 5 mm by 20 deg"] = [](const SceneSource& source, benchmark::State& state) {
    const Shell shell = make_shell(source, {});
    for (auto _ : state)
      benchmark::DoNotOptimize(make_strands(source, {}, shell, {40.0, 45.0, {0.3, 0.3 + std::numbers::pi / 9.0}}));
  };
  all["spool"] = [](const SceneSource& source, benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(make_spool(source.plan(), {}));
  };
  all["pick"] = [](const SceneSource& source, benchmark::State& state) {
    View view;
    view.camera = fit_camera(source.plan(), view);
    int i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(pick_fiber(source, view, ray_at(view, ++i)));
  };
  all["facts"] = [](const SceneSource& source, benchmark::State& state) {
    std::size_t node = 0;
    for (auto _ : state)
      benchmark::DoNotOptimize(facts_of(source, node = (node + 7919) % source.build().nodes.size()));
  };
  all["scene with a wedge"] = [](const SceneSource& source, benchmark::State& state) {
    View view;
    view.wedge = Sector{0.3, 1.4};
    for (auto _ : state) benchmark::DoNotOptimize(make_scene(source, view));
  };
  return all;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

class Medians : public benchmark::ConsoleReporter {
 public:
  Medians() : ConsoleReporter(OO_Tabular) {}
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration || run.error_occurred) continue;
      times_[run.run_name.function_name].push_back(run.cpu_accumulated_time / static_cast<double>(run.iterations));
    }
  }
  void print(const std::string& name, const std::string& job) const {
    const auto all = times_.find(name + ", 25 km"), first = times_.find(name + ", 1 km");
    if (all == times_.end() || first == times_.end()) return;
    const double long_s = median(all->second), short_s = median(first->second);
    fmt::print("{:28} {:9.3f} ms   {:6.2f} times that of 1 km\n", job, 1e3 * long_s, long_s / short_s);
  }

 private:
  std::map<std::string, std::vector<double>> times_;
};

}  // namespace

int main(int argc, char** argv) {
  const std::unique_ptr<SceneSource> all = source_of(25e6), first = source_of(1e6);
  fmt::print("25 km: {} nodes at {} stations, {:.0f} MB; index {:.0f} MB\n", all->build().nodes.size(),
             all->stations(), 1e-6 * static_cast<double>(all->build().nodes.bytes()),
             1e-6 * static_cast<double>(all->shells().bytes()));
  fmt::print("shell: {} columns, {} rows\n", all->shells().grid().columns, all->shells().grid().rows);
  const auto list = jobs();
  for (const auto& [name, job] : list) {
    for (const SceneSource* source : {all.get(), first.get()}) {
      const std::string full = name + (source == all.get() ? ", 25 km" : ", 1 km");
      benchmark::RegisterBenchmark(full.c_str(),
                                   [job = job, source](benchmark::State& state) { job(*source, state); })
          ->Repetitions(repetitions)
          ->Unit(benchmark::kMillisecond)
          ->MinTime(0.1);
    }
  }
  const auto shared_build = std::make_shared<const Build>(all->build());
  const auto shared_figures = std::make_shared<const Measurements>(all->measurements());
  benchmark::RegisterBenchmark("index, 25 km", [&](benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(SceneSource(all->plan(), shared_build, shared_figures));
  })->Unit(benchmark::kMillisecond);
  benchmark::Initialize(&argc, argv);
  Medians reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  for (const auto& [name, job] : list) reporter.print(name, name);
  return 0;
}
