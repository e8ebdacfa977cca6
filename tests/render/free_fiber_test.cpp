// The free fiber, which goes anywhere around the spool, comes to no words.
#include <algorithm>

#include <catch2/catch.hpp>

#include "render/laid_scene.h"
#include "render/overlay.h"
#include "render/overlay_fiber.h"
#include "render/picture_file.h"

using namespace laywright;

namespace {

// With a guide so far away that its fiber leaves the picture, whatever way it goes.
SceneSource far_guide() {
  PlanDraft draft = small_source().plan().draft();
  draft.traverse.free_length_mm = 300.0;
  const Plan plan = check(draft).value();
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  return {plan, build, std::make_shared<const Measurements>(measure(plan, *build, progress))};
}

// Like a picture, or a frame of a film, of a moment.
View moment_of(const SceneSource& source, double turn, int width, int height) {
  View view;
  view.width_px = width;
  view.height_px = height;
  view.dimensions = view.findings = false;
  view.until_turn = turn;
  view.camera.azimuth_deg = 24.0;
  view.camera.elevation_deg = 16.0;
  view.camera = fit_camera(source.plan(), view);
  return view;
}

OverlaySettings with_title(std::vector<GuideInWay> guides) {
  OverlaySettings words;
  words.title = "Sensor fiber, even build";
  words.subtitle = "7.62 km of fiber, 9700 turns, 69.5 mm thick";
  words.guides = std::move(guides);
  return words;
}

// Pixels of words, and of their ground, that the fiber runs through, far from the ring around the lay point.
int written_on(const Canvas& canvas, const View& view, const GuidePose& guide) {
  const auto lay_point = in_picture(view, guide.lay_point);
  int count = 0;
  for (const OverlayLine& line : free_fibers(view, {{guide, 2.0}})) {
    const int steps = std::max(1, static_cast<int>(glm::distance(line.from, line.to)));
    for (int i = 0; i <= steps; ++i) {
      const glm::dvec2 at = glm::mix(line.from, line.to, static_cast<double>(i) / steps);
      if (lay_point && glm::distance(at, *lay_point) < 14.0) continue;
      if (at.x < 0.0 || at.y < 0.0 || at.x >= view.width_px || at.y >= view.height_px) continue;
      const auto x = static_cast<std::size_t>(at.x), y = static_cast<std::size_t>(at.y);
      count += canvas.data()[4 * (y * static_cast<std::size_t>(canvas.width()) + x) + 3] > 8 ? 1 : 0;
    }
  }
  return count;
}

bool is_written(const PictureFile& told, const PictureFile& bare, int x, int y) {
  const Pixel &a = told.at(x, y), &b = bare.at(x, y);
  return std::abs(a.r - b.r) + std::abs(a.g - b.g) + std::abs(a.b - b.b) > 12;
}

}  // namespace

TEST_CASE("title, figures, legend and scale keep clear of the free fiber, wherever it goes") {
  const SceneSource source = far_guide();
  int crossed = 0;
  for (const auto& [width, height] : {std::pair{1280, 720}, {960, 540}, {800, 600}, {600, 800}}) {
    for (double turn = 10.0; turn < 11.0; turn += 0.04) {
      const View view = moment_of(source, turn, width, height);
      const Scene scene = make_scene(source, view);
      REQUIRE(scene.guide);
      INFO(width << "x" << height << " after " << turn << " turns");
      Canvas clear(width, height), unaware(width, height);
      draw_overlay(clear, scene, view, with_title({{scene.guide->pose, scene.guide->eye_radius_mm}}));
      CHECK(written_on(clear, view, scene.guide->pose) == 0);
      draw_overlay(unaware, scene, view, with_title({}));
      crossed += written_on(unaware, view, scene.guide->pose) > 0 ? 1 : 0;
    }
  }
  CHECK(crossed > 0);
}

TEST_CASE("in a film the guide stands in front and the words stand still, clear of the free fiber in all frames") {
  constexpr int growing = 10;  // of its twelve frames
  constexpr double turns = 72.0, in_front = 0.125;
  const Workshop shop;
  shop.write("a.lay.toml", spool_plan(turns));
  const Plan plan = load_plan(shop.at("a.lay.toml")).value();
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  const SceneSource source(plan, build, std::make_shared<const Measurements>(measure(plan, *build, progress)));
  const std::string film =
      " export a.lay.toml --show fill --guide --until 72 --fps 12 --seconds 1 --size 480x270 --frames ";
  REQUIRE(shop.run("$LW" + film + "told && $LW" + film + "bare --plain").code == 0);
  for (int frame = 0; frame + 1 < growing; ++frame) {
    const std::string name = "/frame-" + std::string(frame < 9 ? "000" : "00") + std::to_string(frame + 1) + ".png";
    const PictureFile told = read_png(shop.at("told" + name)), bare = read_png(shop.at("bare" + name));
    const double turn = turn_at_length(source, length_at_turn(source, turns) * (frame + 1) / growing);
    const GuidePose guide = guide_pose(source, std::floor(turn - in_front) + in_front);
    const View view = moment_of(source, guide.turn, 480, 270);
    const auto lay_point = in_picture(view, guide.lay_point);
    int words = 0, crossed = 0;
    for (int y = 0; y < 270; ++y)
      for (int x = 0; x < 480; ++x) words += is_written(told, bare, x, y) ? 1 : 0;
    for (const OverlayLine& line : free_fibers(view, {{guide, 2.0}}))
      for (double share = 0.0; share <= 1.0; share += 0.002) {
        const glm::dvec2 at = glm::mix(line.from, line.to, share);
        if (glm::distance(at, *lay_point) < 14.0 || at.x < 0 || at.y < 0 || at.x >= 480 || at.y >= 270) continue;
        crossed += is_written(told, bare, static_cast<int>(at.x), static_cast<int>(at.y)) ? 1 : 0;
      }
    INFO("frame " << frame + 1);
    CHECK(words > 1000);
    CHECK(crossed == 0);
  }
}
