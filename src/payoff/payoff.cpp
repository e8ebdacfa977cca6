#include "payoff/payoff.h"

#include <algorithm>

#include "measure/acceptance.h"
#include "measure/fiber_line.h"
#include "measure/grade.h"
#include "payoff/hold.h"
#include "payoff/parts.h"

namespace laywright {
namespace {

// A shorter interruption does not end a catch.
constexpr double joined_over_turns = 5.0 / 360.0;

class Collector {
 public:
  Collector(const Build& build, PayoffRun& run) : build_(build), line_(build), run_(run) {
    joined_over_ = static_cast<std::size_t>(joined_over_turns * build.stations_per_turn);
  }

  void add(std::size_t node, std::size_t stroke, const Held& held) {
    PayoffLayer& layer = run_.layers[stroke];
    layer.mean += held.multiple;
    layer.greatest = std::max(layer.greatest, held.multiple);
    ++run_.nodes[static_cast<std::size_t>(held.by)];
    if (held.multiple > run_.greatest) {
      run_.greatest = held.multiple;
      run_.hardest = PayoffCatch{};
      run_.hardest->by = held.by;
      run_.hardest->node = run_.hardest->first_node = node;
      run_.hardest->end_node = node + 1;
      run_.hardest->layer = static_cast<int>(stroke) + 1;
      run_.hardest->multiple = held.multiple;
    }
    if (held.multiple <= run_.limit) return;
    const double length = line_.between(node, node + 1);
    layer.caught_mm += length;
    run_.caught_mm += length;
    const bool joined =
        open_ && node <= open_->end_node + joined_over_ && open_->layer == static_cast<int>(stroke) + 1;
    if (!joined) close();
    if (!open_) {
      open_.emplace();
      open_->first_node = node;
      open_->layer = static_cast<int>(stroke) + 1;
      open_->multiple = 0.0;
      ++layer.catches;
    }
    open_->end_node = node + 1;
    if (held.multiple <= open_->multiple) return;
    open_->multiple = held.multiple;
    open_->by = held.by;
    open_->node = node;
  }

  void finish() {
    close();
    keep_hardest();
    for (PayoffCatch& caught : run_.catches) place(caught);
    if (run_.hardest) place(*run_.hardest);
    double sum = 0.0, count = 0.0;
    for (std::size_t s = 0; s < run_.layers.size(); ++s) {
      const auto size = static_cast<double>(build_.end_of(s) - build_.strokes[s].first_node);
      sum += run_.layers[s].mean;
      count += size;
      run_.layers[s].mean = size > 0.0 ? run_.layers[s].mean / size : 1.0;
    }
    if (count > 0.0) run_.mean = sum / count;
  }

 private:
  void close() {
    if (!open_) return;
    ++run_.catch_count;
    ++run_.of_severity[static_cast<std::size_t>(severity_of_force(open_->multiple, run_.limit))];
    run_.catches.push_back(*open_);
    open_.reset();
    if (run_.catches.size() >= 2 * PayoffRun::most_catches) keep_hardest();
  }
  void keep_hardest() {
    std::stable_sort(run_.catches.begin(), run_.catches.end(),
                     [](const PayoffCatch& a, const PayoffCatch& b) { return a.multiple > b.multiple; });
    if (run_.catches.size() > PayoffRun::most_catches) run_.catches.resize(PayoffRun::most_catches);
  }
  void place(PayoffCatch& caught) const {
    const auto stations = static_cast<std::size_t>(build_.stations_per_turn);
    caught.turn = static_cast<double>(caught.node) / build_.stations_per_turn;
    caught.x_mm = build_.nodes.x(caught.node);
    caught.angle_deg = 360.0 * static_cast<double>(caught.node % stations) / build_.stations_per_turn;
    caught.from_outer_end_mm = std::max(0.0, build_.length_mm - line_.at(caught.node));
    caught.length_mm = line_.between(caught.first_node, caught.end_node);
    caught.severity = severity_of_force(caught.multiple, run_.limit);
  }

  const Build& build_;
  FiberLine line_;
  PayoffRun& run_;
  std::size_t joined_over_ = 0;
  std::optional<PayoffCatch> open_;
};

}  // namespace

Grade grade_of_force(double multiple, double limit) { return grade_at_most(multiple - 1.0, limit - 1.0); }

FindingSeverity severity_of_force(double multiple, double limit) {
  switch (grade_of_force(multiple, limit)) {
    case Grade::good: return FindingSeverity::small;
    case Grade::marginal: return FindingSeverity::worth_a_look;
    case Grade::do_not_wind: return FindingSeverity::grave;
  }
  return FindingSeverity::small;
}

const char* name_of(DrawOff way) {
  switch (way) {
    case DrawOff::side: return "side";
    case DrawOff::over_left: return "over_left";
    case DrawOff::over_right: return "over_right";
  }
  return "";
}

const char* name_of(HeldBy by) {
  switch (by) {
    case HeldBy::free: return "free";
    case HeldBy::led_aside: return "led_aside";
    case HeldBy::drawn_over: return "drawn_over";
    case HeldBy::in_slit: return "in_slit";
    case HeldBy::under_turns: return "under_turns";
  }
  return "";
}

PayoffRun pay_off(const Plan& plan, const Build& build, const PayoffSettings& settings, Progress& progress) {
  PayoffRun run;
  run.way = settings.way;
  run.limit = acceptance_of(plan).payoff_force;
  run.friction = payoff_friction(plan.fiber().friction);
  run.friction_assumed = run.friction != plan.fiber().friction;
  if (settings.way == DrawOff::side) run.eye_mm = eye_distance_mm(plan, settings);
  const Unwinding found = unwind(plan, build, settings.way, progress);
  if (progress.cancelled()) return run;
  for (std::size_t s = 0; s < build.strokes.size(); ++s) {
    run.layers.emplace_back();
    run.layers.back().layer = static_cast<int>(s) + 1;
    run.layers.back().mean = 0.0;
  }
  Forces forces(plan, build, found, settings);
  Collector collect(build, run);
  if (settings.each_node) run.multiples.resize(build.nodes.size());
  for (std::size_t s = 0; s < build.strokes.size(); ++s) {
    for (std::size_t node = build.strokes[s].first_node; node < build.end_of(s); ++node) {
      const Held held = forces.at(node);
      collect.add(node, s, held);
      if (settings.each_node) run.multiples[node] = static_cast<float>(held.multiple);
    }
  }
  collect.finish();
  progress.report(1.0);
  return run;
}

}  // namespace laywright
