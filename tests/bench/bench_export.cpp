// Speed of exports: 3 km of the long sample into a stream that counts and forgets, so that no disk is measured.
// Processor time of the one thread, median of five; and the same for a copy of as many bytes in memory, in one run.
#include <fmt/format.h>

#include <algorithm>
#include <cstring>
#include <ctime>
#include <functional>
#include <memory>
#include <numeric>
#include <streambuf>
#include <vector>

#include "export/glb.h"
#include "export/vtp.h"
#include "figures/csv.h"
#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;

class Counter : public std::streambuf {
 public:
  [[nodiscard]] std::size_t bytes() const { return bytes_; }

 protected:
  std::streamsize xsputn(const char*, std::streamsize count) override {
    bytes_ += static_cast<std::size_t>(count);
    return count;
  }
  int_type overflow(int_type c) override {
    ++bytes_;
    return traits_type::not_eof(c);
  }

 private:
  std::size_t bytes_ = 0;
};

double processor_s() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

double median_s(const std::function<void()>& work) {
  std::vector<double> times;
  for (int i = 0; i < 5; ++i) {
    const double begin = processor_s();
    work();
    times.push_back(processor_s() - begin);
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

void measure_one(const char* name, const std::function<void(std::ostream&)>& write) {
  std::size_t bytes = 0;
  const double time = median_s([&] {
    Counter counter;
    std::ostream out(&counter);
    write(out);
    bytes = counter.bytes();
  });
  std::vector<char> from(bytes, 'x'), to(bytes);
  const double copy = median_s([&] {
    std::memcpy(to.data(), from.data(), bytes);
    // So that the copy is not left out.
    asm volatile("" : : "r"(to.data()) : "memory");
  });
  const auto size = static_cast<double>(bytes);
  fmt::print("{:<28} {:8.1f} MB  {:7.0f} MB/s  {:6.1f} times a copy in memory\n", name, size / 1e6,
             size / 1e6 / time, time / copy);
}

}  // namespace

int main() {
  PlanDraft draft = load_plan(LAYWRIGHT_SAMPLES "/long.lay.toml").value().draft();
  draft.wind.length_mm = 3e6;
  const Plan plan = check(draft).value();
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  const SceneSource source(plan, build, std::make_shared<const Measurements>());
  fmt::print("{} nodes\n", build->nodes.size());

  GlbSettings model;
  model.sides = 6;
  measure_one("GLB, six sides", [&](std::ostream& out) {
    model.most_bytes = 1e10;
    write_glb(out, make_glb(source, model, progress).value());
  });
  model.tolerance_mm = 0.0;
  measure_one("GLB, every station",
              [&](std::ostream& out) { write_glb(out, make_glb(source, model, progress).value()); });
  VtpSettings lines;
  lines.most_bytes = 1e10;
  measure_one("VTP, every station",
              [&](std::ostream& out) { write_vtp(out, source, plan_vtp(source, lines).value(), progress); });
  measure_one("CSV, every station", [&](std::ostream& out) {
    write_path_csv(out, *build, progress, {build->nodes.size(), 1, {}});
  });
}
