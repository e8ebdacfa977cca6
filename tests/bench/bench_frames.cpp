// Time of a picture's passes over the length of the wind: 1280 x 720 pixels or as many as are given, offscreen, on
// whatever OpenGL there is, as the window's painter makes them. Each figure is the median, and in brackets the mean
// processor time of all threads together, which waiting for other programs does not lengthen. Turning: the first, quick
// pass of a picture whose camera moves, words included, 201 frames, with the 99th percentile of them; behind the times, how many pixels it draws to one of the
// picture's: as many as take 10 ms of the processor or 4 ms of a graphics card, within bounds. Settled: the longest of
// the passes that follow where the camera stands still, and all of them together. Shape: the turning picture at a
// hundredth of the pixels, which is what all but the pixels costs. Figures, not checks; on a shared machine what counts
// are the ratios.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <ctime>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "paint/offscreen_context.h"
#include "paint/pass_painter.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;
using Clock = std::chrono::steady_clock;

constexpr int frames = 15;
constexpr int turning_frames = 201;  // the third longest is the 99th percentile

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

struct Times {
  double median_ms = 0.0, processor_ms = 0.0, slow_ms = 0.0;  // slow: the 99th percentile
};

template <class Work>
Times times_of(const Work& work, int count = frames) {
  std::vector<double> times;
  const std::clock_t before = std::clock();
  for (int i = 0; i < count; ++i) {
    const Clock::time_point start = Clock::now();
    work(i);
    glFinish();
    times.push_back(ms_since(start));
  }
  const double processor_s = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
  std::sort(times.begin(), times.end());
  const auto slow = static_cast<std::size_t>(std::ceil(0.99 * count)) - 1;
  return {times[static_cast<std::size_t>(count) / 2], 1000.0 * processor_s / count, times[slow]};
}

Plan plan_of(double length_km) {
  Result<Plan> plan = load_plan(LAYWRIGHT_SAMPLES "/long.lay.toml");
  if (!plan.ok()) throw std::runtime_error(to_text(plan.issues().front()));
  PlanDraft draft = plan.value().draft();
  draft.wind.length_mm = length_km * 1e6;
  draft.spool.flange_diameter_mm = 400.0;  // room for 100 km
  return check(draft).value();
}

struct Stage {
  View view;
  Scene scene;
  CloseUp close_up;
};

struct Size {
  int width = 1280, height = 720;
};

Stage stage_of(const SceneSource& source, Size size, double zoom, double cut_to) {
  Stage stage;
  stage.view.width_px = size.width;
  stage.view.height_px = size.height;
  if (cut_to > 0.0) stage.view.wedge = Sector{0.5, cut_to};
  stage.view.camera = fit_camera(source.plan(), stage.view);
  stage.view.camera.distance_mm /= zoom;
  if (zoom > 1.0) stage.view.camera.target = in_space(40.0, source.measurements().outer_diameter.middle_mm / 2, 1.2);
  stage.scene = make_scene(source, stage.view);
  stage.close_up = make_close_up(source, stage.scene, stage.view, close_up_beyond(stage.scene.shell));
  return stage;
}

double longest(const std::vector<Times>& passes) {
  double ms = 0.0;
  for (const Times& pass : passes) ms = std::max(ms, pass.median_ms);
  return ms;
}

Times sum_of(const std::vector<Times>& passes) {
  Times sum;
  for (const Times& pass : passes) {
    sum.median_ms += pass.median_ms;
    sum.processor_ms += pass.processor_ms;
  }
  return sum;
}

Times time_turning(PassPainter& pass_painter, PaintOrder order, FinishedPicture& sheet) {
  const double azimuth = order.view.camera.azimuth_deg;
  const auto turn = [&](int i) {
    order.view.camera.azimuth_deg = azimuth + 0.2 * (i + 1);
    (void)pass_painter.paint(order, 0, sheet);
  };
  for (int i = 0; i < frames; ++i) turn(frames + i);  // until it has found how fine it can be
  return times_of(turn, turning_frames);
}

void time_stage(const char* name, const std::shared_ptr<const SceneSource>& source, Drawer drawer,
                const Stage& stage) {
  PassPainter pass_painter(drawer);
  FinishedPicture sheet;
  PaintOrder order{source, std::make_shared<Scene>(stage.scene), std::make_shared<CloseUp>(stage.close_up),
                   stage.view, 1.0};
  const Times turning = time_turning(pass_painter, order, sheet);
  const double scale = pass_painter.quick_scale(order.view);
  std::vector<Times> passes;
  (void)pass_painter.paint(order, 0, sheet);
  for (bool finest = false; !finest;) {
    const int pass = static_cast<int>(passes.size()) + 1;
    passes.push_back(times_of([&](int) { finest = pass_painter.paint(order, pass, sheet).finest; }));
  }
  PaintOrder tiny = order;
  tiny.view.width_px /= 10;
  tiny.view.height_px /= 10;
  const Times shape = time_turning(pass_painter, tiny, sheet);
  const Times settled = sum_of(passes);
  fmt::print(
      "  {:<16} turning {:5.1f} ({:5.1f}) ms, 99 % {:5.1f} ms, of {:.2f}   settled: longest {:5.1f}, all {:6.1f} "
      "({:6.1f}) ms   "
      "shape {:4.1f} ({:4.1f}) ms   {} strand points\n",
      name, turning.median_ms, turning.processor_ms, turning.slow_ms, scale * scale, longest(passes),
      settled.median_ms, settled.processor_ms, shape.median_ms, shape.processor_ms,
      stage.close_up.strands ? stage.close_up.strands->points.size() : 0);
}

void time_pick(const SceneSource& source, const View& view) {
  std::size_t met = 0;
  const Times pick = times_of([&](int i) {
    const Ray ray = ray_through(view, 0.5 * view.width_px + i, 0.5 * view.height_px);
    if (pick_fiber(source, view, ray)) ++met;
  });
  fmt::print("  picking {:.3f} ms ({} of {} rays meet fiber)\n", pick.median_ms, met, frames);
}

void time_length(double length_km, Size size, Drawer drawer) {
  const Plan plan = plan_of(length_km);
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  const auto measurements = std::make_shared<const Measurements>(measure(plan, *build, progress));
  Clock::time_point start = Clock::now();
  const auto source = std::make_shared<const SceneSource>(plan, build, measurements);
  fmt::print("{} km, {:.0f} turns; source {:.0f} ms\n", length_km, build->turns, ms_since(start));
  start = Clock::now();
  const Stage whole = stage_of(*source, size, 1.0, 0.0);
  const double scene_ms = ms_since(start);
  start = Clock::now();
  PassPainter pass_painter(drawer);
  const double programs_ms = ms_since(start);
  start = Clock::now();
  FinishedPicture sheet;
  const PaintOrder order{source, std::make_shared<Scene>(whole.scene), std::make_shared<CloseUp>(whole.close_up),
                         whole.view, 1.0};
  (void)pass_painter.paint(order, 0, sheet);
  fmt::print("  first picture: scene {:.0f} ms, programs {:.0f} ms, upload and draw {:.0f} ms\n", scene_ms,
             programs_ms, ms_since(start));
  time_stage("whole spool", source, drawer, whole);
  time_stage("wedge cut", source, drawer, stage_of(*source, size, 1.0, 1.9));
  time_stage("8 times nearer", source, drawer, stage_of(*source, size, 8.0, 0.0));
  time_stage("25 times nearer", source, drawer, stage_of(*source, size, 25.0, 0.0));
  time_pick(*source, whole.view);
}

}  // namespace

// Lengths in km may be given, 1, 25 and 100 by default; and a size, such as 1920x1080.
int main(int argc, char** argv) {
  const Clock::time_point start = Clock::now();
  const Result<OffscreenContext> context = OffscreenContext::open();
  if (!context.ok()) {
    fmt::print(stderr, "{}\n", to_text(context.issues().front()));
    return 3;
  }
  fmt::print("{}; context {:.0f} ms\n", context.value().renderer(), ms_since(start));
  const bool software = context.value().renderer().find("llvmpipe") != std::string::npos;
  const Drawer drawer = software ? Drawer::processor : Drawer::graphics_card;
  std::vector<double> lengths_km;
  Size size;
  for (const std::string& argument : std::vector<std::string>(argv + 1, argv + argc)) {
    const std::size_t cross = argument.find('x');
    if (cross == std::string::npos)
      lengths_km.push_back(std::stod(argument));
    else
      size = {std::stoi(argument), std::stoi(argument.substr(cross + 1))};
  }
  if (lengths_km.empty()) lengths_km = {1.0, 25.0, 100.0};
  for (const double length_km : lengths_km) time_length(length_km, size, drawer);
}
