// Views of findings: the place is in the picture, and a ray from the eye meets nothing before it, for every finding of
// every sample plan and of random ones. The rays are those of pick.h (held against plain searches in pick_test.cpp) and
// of the triangles that are drawn.
#include <catch2/catch.hpp>

#include <filesystem>
#include <map>

#include <glm/geometric.hpp>

#include "plan/plan_file.h"
#include "scene/finding_view.h"
#include "scene/sight.h"
#include "scenes.h"

using namespace laywright;
using scenes::random_source;
using scenes::source_of;

namespace {

std::vector<std::filesystem::path> sample_plans() {
  std::vector<std::filesystem::path> plans;
  for (const auto& entry : std::filesystem::directory_iterator(LAYWRIGHT_SOURCE_DIR "/samples")) {
    if (entry.path().string().ends_with(".lay.toml")) plans.push_back(entry.path());
  }
  std::sort(plans.begin(), plans.end());
  return plans;
}

SceneSource laid(const std::filesystem::path& file) {
  const Plan plan = load_plan(file).value();
  Progress progress;
  LaySettings settings;
  settings.fidelity = file.filename() == "long.lay.toml" ? 0.1 : 0.5;
  return source_of(plan, lay(plan, settings, progress).value());
}

struct Tally {
  int findings = 0, wedged = 0, peeled = 0, see_through = 0, hidden = 0, at_flange = 0;
  double least_fiber = 1.0;  // share of the picture between the flanges
};

void fly_to_all(const SceneSource& source, const View& view, Tally& tally) {
  const std::size_t count = source.measurements().findings.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Finding& finding = source.measurements().findings[i];
    const View shown = view_of_finding(source, view, i);
    const Mark mark = mark_of(source, shown, i);
    INFO(name_of(finding.kind) << " " << i << ", layers " << finding.layer << " to " << finding.last_layer);
    ++tally.findings;
    tally.wedged += shown.wedge && shown.wedge != view.wedge ? 1 : 0;
    tally.peeled += shown.last_layer.has_value() && shown.last_layer != view.last_layer ? 1 : 0;
    tally.see_through += shown.flanges_see_through ? 1 : 0;
    const InTheWay before = in_the_way(source, shown, mark.place);
    CHECK_FALSE(before.fiber);
    CHECK_FALSE(before.flange);
    CHECK_FALSE(before.barrel);
    tally.hidden += before.nothing() ? 0 : 1;

    CHECK(mark.chosen);
    REQUIRE_FALSE(mark.spots.empty());
    INFO("node " << mark.spots.front().node << " of layer " << source.stroke_of(mark.spots.front().node) + 1
                 << ", x " << mark.spots.front().x_mm << ", shown layers " << shown.first_layer << " to "
                 << shown.last_layer.value_or(-1) << ", x from " << shown.x_from_mm.value_or(-1.0));
    CHECK(mark.spots.front().shown);
    // On the face of a cut it is on the edge of what is removed, but for rounding.
    const auto removed = [&](double off) { return is_removed(removed_sectors(shown), angle_of(mark.place) + off); };
    CHECK_FALSE((removed(-1e-6) && removed(1e-6)));
    const auto at = in_picture(shown, mark.place);
    REQUIRE(at);
    // In the middle, or aside where a flange or the barrel would else fill half of the picture.
    CHECK(std::abs(at->x - 0.5 * shown.width_px) <= 0.43 * shown.width_px);
    CHECK(std::abs(at->y - 0.5 * shown.height_px) <= 0.43 * shown.height_px);
    // Along the spool's axis, which lies across the picture or stands upright in it.
    const bool lies = right_of(shown.camera).x > 0.9, stands = std::abs(up_of(shown.camera).x) > 0.81;
    if (finding.kind == FindingKind::flange_gap && (lies || stands)) {
      ++tally.at_flange;
      const double per_px = mm_per_px(shown) / (lies ? 1.0 : std::abs(up_of(shown.camera).x));
      const double size = lies ? shown.width_px : shown.height_px;
      const double left = 0.5 * size + (0.0 - shown.camera.target.x) / per_px;
      const double right = left + source.plan().spool().inside_width_mm / per_px;
      const double fiber = std::min(right, size) - std::max(left, 0.0);
      tally.least_fiber = std::min(tally.least_fiber, fiber / size);
    }
    CHECK(source.d() / mm_per_px(shown) <= 20.0 + 1e-9);
    const std::vector<Mark> marks = make_marks(source, shown);
    CHECK(std::any_of(marks.begin(), marks.end(), [i](const Mark& m) { return m.finding == i; }));
  }
}

void report(const std::string& name, const Tally& tally) {
  WARN(name << ": " << tally.findings << " findings, " << tally.wedged << " by a wedge, " << tally.peeled
            << " by peeling, " << tally.see_through << " through a flange, " << tally.hidden << " hidden");
}

}  // namespace

TEST_CASE("flying to any finding of any sample: it faces the camera, and nothing is in the way") {
  for (const auto& file : sample_plans()) {
    INFO(file.filename().string());
    const SceneSource source = laid(file);
    View view;
    view.camera = fit_camera(source.plan(), view);
    Tally tally;
    fly_to_all(source, view, tally);
    report(file.filename().string(), tally);
    CHECK(tally.hidden == 0);
    if (tally.at_flange > 0) CHECK(tally.least_fiber > 0.8);
  }
}

TEST_CASE("flying to a finding undoes whatever hides it, in perspective and parallel") {
  Tally tally;
  for (std::uint64_t seed = 500; seed < 512; ++seed) {
    INFO(seed);
    const SceneSource source = random_source(seed);
    View view;
    view.camera = fit_camera(source.plan(), view);
    view.until_turn = 0.2 * source.build().turns;
    view.wedge = Sector{0.0, 3.0};
    view.x_from_mm = 0.4 * source.plan().spool().inside_width_mm;
    view.first_layer = 2;
    if (seed % 2 == 0) view.camera.projection = Projection::parallel;
    fly_to_all(source, view, tally);
  }
  report("random plans", tally);
  CHECK(tally.findings > 20);
}

TEST_CASE("without opening anything, findings are hidden: the ray test can fail") {
  const SceneSource source = laid(LAYWRIGHT_SOURCE_DIR "/samples/even.lay.toml");
  int hidden = 0, count = 0;
  View whole;
  whole.camera = fit_camera(source.plan(), whole);
  for (std::size_t i = 0; i < source.measurements().findings.size(); ++i) {
    View view = view_of_finding(source, whole, i);
    view.wedge.reset();
    view.last_layer.reset();
    view.until_turn.reset();
    ++count;
    hidden += in_the_way(source, view, spots_of(source, i).front().outer()).fiber ? 1 : 0;
  }
  CHECK(hidden > count / 2);
  // A flange stands before what lies beyond it; but the one between the eye and the wind is of glass.
  View beside;
  beside.camera = fit_camera(source.plan(), beside);
  beside.camera.azimuth_deg = 80.0;
  const Vec3 place = in_space(0.5 * source.plan().spool().inside_width_mm, 0.6 * 236.0, 0.5);
  const Vec3 on_wind = in_space(place.x, source.measurements().outer_diameter.greatest_mm / 2, 1.3);
  CHECK_FALSE(in_the_way(source, beside, on_wind).flange);
  const Vec3 beyond = in_space(-30.0, 0.6 * 150.0, 1.3);
  CHECK(in_the_way(source, beside, beyond).flange);
  beside.flanges_see_through = true;
  CHECK_FALSE(in_the_way(source, beside, beyond).flange);
}

TEST_CASE("the flange that the eye looks at from outside is of glass, and neither from between them") {
  Camera camera;
  camera.target = {50.0, 0.0, 0.0};
  camera.elevation_deg = 10.0;
  for (const Projection projection : {Projection::perspective, Projection::parallel}) {
    camera.projection = projection;
    const auto glass = [&](double azimuth_deg, bool both = false) {
      camera.azimuth_deg = azimuth_deg;
      return glass_flanges(camera, 100.0, both);
    };
    CHECK(glass(40.0).right);
    CHECK_FALSE(glass(40.0).left);
    CHECK(glass(-40.0).left);
    CHECK_FALSE(glass(-40.0).right);
    CHECK_FALSE(glass(0.0).left);
    CHECK_FALSE(glass(0.0).right);
    CHECK(glass(0.0, true).left);
    CHECK(glass(0.0, true).right);
  }
  // Between the flanges, however askew the eye looks.
  camera.projection = Projection::perspective;
  camera.distance_mm = 60.0;
  camera.azimuth_deg = 40.0;
  CHECK_FALSE(glass_flanges(camera, 100.0, false).right);
}

TEST_CASE("a place where the fiber is drawn off is seen as the wind is then, with nothing before it") {
  const SceneSource source = random_source(5);
  View view;
  view.last_layer = 1;
  view.wedge = Sector{0.0, 3.0};
  const std::size_t nodes = source.build().nodes.size();
  for (const double share : {0.2, 0.5, 0.9}) {
    const auto node = static_cast<std::size_t>(share * static_cast<double>(nodes));
    const View shown = view_of_leaving(source, view, node, node + 4);
    CHECK(*shown.until_turn == Approx(static_cast<double>(node + 4) / static_cast<double>(source.stations())));
    CHECK_FALSE(shown.last_layer);
    CHECK_FALSE(shown.wedge);
    const double angle = 2.0 * 3.14159265358979 * static_cast<double>(node % source.stations()) /
                         static_cast<double>(source.stations());
    const Vec3 place =
        in_space(source.build().nodes.x(node), source.build().nodes.r(node) + 0.5 * source.d(), angle);
    CHECK(glm::length(shown.camera.target - place) < 1e-6);
    const InTheWay before = in_the_way(source, shown, place);
    CHECK_FALSE(before.fiber);
    CHECK_FALSE(before.barrel);
  }
}
