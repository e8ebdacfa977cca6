// Time of a frame over the length of the wind: 1280 x 720 pixels, offscreen, on whatever OpenGL there is. Each figure
// is the median of 15 frames, and in brackets the mean processor time of all
// threads together, which waiting for other programs does not lengthen, glFinish() included. An orbiting frame has one fine pixel to a pixel, a settled one four
// (2 x 2) and the overlay. Figures, not checks; on a shared machine what counts are the ratios.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <ctime>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"
#include "render/offscreen_context.h"
#include "render/overlay.h"
#include "render/scene_renderer.h"

namespace {

using namespace laywright;
using Clock = std::chrono::steady_clock;

constexpr int frames = 15;

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

struct Times {
  double median_ms = 0.0, processor_ms = 0.0;
};

template <class Work>
Times times_of(const Work& work) {
  std::vector<double> times;
  const std::clock_t before = std::clock();
  for (int i = 0; i < frames; ++i) {
    const Clock::time_point start = Clock::now();
    work(i);
    glFinish();
    times.push_back(ms_since(start));
  }
  const double processor_s = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
  std::sort(times.begin(), times.end());
  return {times[frames / 2], 1000.0 * processor_s / frames};
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

Stage stage_of(const SceneSource& source, double zoom, double cut_to) {
  Stage stage;
  if (cut_to > 0.0) stage.view.wedge = Sector{0.5, cut_to};
  stage.view.camera = fit_camera(source.plan(), stage.view);
  stage.view.camera.distance_mm /= zoom;
  if (zoom > 1.0) stage.view.camera.target = in_space(40.0, source.measurements().outer_diameter.middle_mm / 2, 1.2);
  stage.scene = make_scene(source, stage.view);
  stage.close_up = make_close_up(source, stage.scene, stage.view);
  return stage;
}

void time_stage(const char* name, const SceneSource& source, SceneRenderer& renderer, Stage stage) {
  renderer.load(stage.scene);
  renderer.load(stage.close_up, stage.scene);
  const Sphere sphere = sphere_around(source.plan());
  View& view = stage.view;
  const FrameTarget quick(view.width_px, view.height_px, 1), fine(view.width_px, view.height_px, 2);
  const double azimuth = view.camera.azimuth_deg;
  const Times orbit = times_of([&](int i) {
    view.camera.azimuth_deg = azimuth + 0.2 * i;
    renderer.draw(quick, stage.scene, view, sphere);
  });
  const Times settled = times_of([&](int) {
    Canvas canvas(view.width_px, view.height_px);
    draw_overlay(canvas, stage.scene, view);
    FrameStyle style;
    style.overlay = &canvas;
    renderer.draw(fine, stage.scene, view, sphere, style);
  });
  std::uint32_t id = 0;
  const Times pick = times_of([&](int i) { id = quick.id_at(640 + i, 360); });
  fmt::print(
      "  {:<16} orbit {:6.1f} ({:6.1f}) ms   settled {:6.1f} ({:6.1f}) ms   pick {:.3f} ms   {} strand points\n",
      name, orbit.median_ms, orbit.processor_ms, settled.median_ms, settled.processor_ms, pick.median_ms,
      stage.close_up.strands ? stage.close_up.strands->points.size() : 0);
}

void time_length(double length_km) {
  const Plan plan = plan_of(length_km);
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  const auto measurements = std::make_shared<const Measurements>(measure(plan, *build, progress));
  Clock::time_point start = Clock::now();
  const SceneSource source(plan, build, measurements);
  fmt::print("{} km, {:.0f} turns; source {:.0f} ms\n", length_km, build->turns, ms_since(start));
  start = Clock::now();
  Stage whole = stage_of(source, 1.0, 0.0);
  const double scene_ms = ms_since(start);
  start = Clock::now();
  SceneRenderer renderer;
  const double programs_ms = ms_since(start);
  start = Clock::now();
  renderer.load(whole.scene);
  const FrameTarget target(whole.view.width_px, whole.view.height_px, 1);
  renderer.draw(target, whole.scene, whole.view, sphere_around(plan));
  glFinish();
  fmt::print("  first frame: scene {:.0f} ms, programs {:.0f} ms, upload and draw {:.0f} ms\n", scene_ms,
             programs_ms, ms_since(start));
  time_stage("whole spool", source, renderer, std::move(whole));
  time_stage("wedge cut", source, renderer, stage_of(source, 1.0, 1.9));
  time_stage("8 times nearer", source, renderer, stage_of(source, 8.0, 0.0));
  time_stage("25 times nearer", source, renderer, stage_of(source, 25.0, 0.0));
}

}  // namespace

// Lengths in km may be given; 1, 25 and 100 by default.
int main(int argc, char** argv) {
  const Clock::time_point start = Clock::now();
  const Result<OffscreenContext> context = OffscreenContext::open();
  if (!context.ok()) {
    fmt::print(stderr, "{}\n", to_text(context.issues().front()));
    return 3;
  }
  fmt::print("{}; context {:.0f} ms\n", context.value().renderer(), ms_since(start));
  std::vector<double> lengths_km;
  for (int i = 1; i < argc; ++i) lengths_km.push_back(std::stod(argv[i]));
  if (lengths_km.empty()) lengths_km = {1.0, 25.0, 100.0};
  for (const double length_km : lengths_km) time_length(length_km);
}
