// Marks, dimension lines, scale bar, strands, and the scene as a whole.
#include <catch2/catch.hpp>

#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>
#include <set>
#include <string>

#include "base/quantity_text.h"
#include "scene/covering.h"
#include "scenes.h"

using namespace laywright;
using scenes::Draw;
using scenes::random_source;
using scenes::source_of;

TEST_CASE("every kind of finding has a look of its own") {
  const Plan plan = synthetic::plan_of(synthetic::draft());
  Build build = synthetic::nested(plan, 16, 2, 12, 1.2);
  auto measured = std::make_shared<Measurements>();
  for (int kind = 0; kind <= static_cast<int>(FindingKind::rim_overrun); ++kind) {
    Finding finding;
    finding.kind = static_cast<FindingKind>(kind);
    finding.layer = finding.last_layer = 1;
    finding.x_mm = {3.0, 6.0};
    finding.angle_deg = {20.0, 80.0};
    measured->findings.push_back(finding);
  }
  const SceneSource source(plan, std::make_shared<const Build>(build), measured);
  const std::vector<Mark> marks = make_marks(source, {});
  REQUIRE(marks.size() == 9);
  std::set<std::tuple<MarkShape, Glyph, bool>> looks;
  for (const Mark& mark : marks) {
    looks.insert({mark.shape, mark.glyph, mark.dashed});
    // Layer 1: centres at 50.5, surface at 51; layer 2 lies over it.
    CHECK(mark.radius_mm == Approx(51.0).margin(1e-6));
    CHECK(mark.covered);
    CHECK(mark.place.x == Approx(4.5));
    CHECK(radius_of(mark.place) == Approx(51.0));
    CHECK(angle_of(mark.place) == Approx(50.0 / 180.0 * std::numbers::pi));
  }
  CHECK(looks.size() == 9);

  View view;
  view.last_layer = 1;
  for (const Mark& mark : make_marks(source, view)) CHECK_FALSE(mark.covered);
  view.first_layer = 2;
  view.last_layer = 2;
  CHECK(make_marks(source, view).empty());
  view = {};
  view.x_from_mm = 7.0;
  CHECK(make_marks(source, view).empty());
  view = {};
  view.findings = false;
  CHECK(make_marks(source, view).empty());
  for (Finding& finding : measured->findings) finding.turn = 5.0;
  view = {};
  view.until_turn = 4.0;
  CHECK(make_marks(source, view).empty());
}

TEST_CASE("outlines are closed lines on their cylinder") {
  Mark mark;
  mark.x_from_mm = 2.0;
  mark.x_to_mm = 5.0;
  mark.radius_mm = 60.0;
  mark.sector = {0.3, 1.4};
  const std::vector<Vec3> part = outline_of(mark);
  CHECK(part.front() == part.back());
  mark.sector = {0.3, 0.3 + 2.0 * std::numbers::pi};
  const std::vector<Vec3> rings = outline_of(mark);
  const std::size_t half = rings.size() / 2;
  CHECK(rings.front() == rings[half - 1]);
  CHECK(rings[half] == rings.back());
  CHECK(rings.front().x == 2.0);
  CHECK(rings.back().x == 5.0);
  for (const auto& line : {part, rings}) {
    for (std::size_t i = 0; i < line.size(); ++i) {
      CHECK(radius_of(line[i]) == Approx(60.0));
      const bool leap = &line[0] == &rings[0] && i == half;
      if (i > 0 && !leap && line[i].x == line[i - 1].x) CHECK(glm::length(line[i] - line[i - 1]) <= 60.0 * 0.0524);
    }
  }
}

TEST_CASE("dimension lines measure what they say") {
  const SceneSource source = random_source(7, 300.0);
  const double greatest = source.measurements().outer_diameter.greatest_mm;
  View view;
  const auto lines = make_dimensions(source, view);
  REQUIRE(lines.size() == 3);
  const std::map<std::string, double> expected{{"rim", source.plan().spool().flange_diameter_mm},
                                               {"wound", greatest},
                                               {"inside", source.plan().spool().inside_width_mm}};
  for (const DimensionLine& line : lines) {
    const std::string word = line.text.substr(0, line.text.find(' '));
    REQUIRE(expected.count(word) == 1);
    const double measured = line.pointed ? 2.0 * radius_of(line.measured_from) : glm::length(line.to - line.from);
    CHECK(measured == Approx(expected.at(word)));
    CHECK(line.text.ends_with(' ' + short_size_text(expected.at(word), 2, false)));
    if (!line.pointed) CHECK(line.from.z == 0.0);
  }
  // A quantity with its unit stands at the end, so that "in" is an inch and nothing else.
  View inch = view;
  inch.units = Units::inch;
  for (const DimensionLine& line : make_dimensions(source, inch)) CHECK(line.text.ends_with(" in"));
  view.until_turn = 10.0;  // not the final diameter
  CHECK(make_dimensions(source, view).size() == 2);
  view.dimensions = false;
  CHECK(make_dimensions(source, view).empty());
}

TEST_CASE("the wound diameter points at the place that it measures") {
  const SceneSource source = random_source(7, 300.0);
  const SurfacePlace highest = *source.measurements().outer_diameter.greatest_at;
  const double own = highest.angle_deg / 180.0 * std::numbers::pi;
  // The fiber itself lies there, as the build has it.
  const auto top = newest_over(source, nearest_station(source, own), highest.x_mm, 0, source.build().nodes.size());
  REQUIRE(top);
  const double greatest = 0.5 * source.measurements().outer_diameter.greatest_mm;
  CHECK(source.build().nodes.r(*top) + 0.5 * source.d() == Approx(greatest));
  View view;
  const auto wound = [&] {
    const auto lines = make_dimensions(source, view);
    const auto found =
        std::find_if(lines.begin(), lines.end(), [](const DimensionLine& line) { return line.pointed; });
    return found == lines.end() ? std::nullopt : std::optional(*found);
  };
  for (const double elevation : {25.0, -25.0}) {
    view.camera.elevation_deg = elevation;
    const auto line = wound();
    REQUIRE(line);
    const Vec3 tip = elevation >= 0.0 ? line->measured_from : line->measured_to;
    CHECK(tip.x == highest.x_mm);
    CHECK(radius_of(tip) == Approx(greatest));
    const double side = elevation >= 0.0 ? 0.0 : std::numbers::pi;
    const Vec3 itself = in_space(highest.x_mm, greatest, own);
    const bool near = std::abs(std::remainder(own - side, 2.0 * std::numbers::pi)) <= std::numbers::pi / 3.0;
    if (near) CHECK(glm::length(tip - itself) == Approx(0.0).margin(1e-9));
  }
  // What is cut away is not pointed at.
  view.x_from_mm = highest.x_mm + 1.0;
  CHECK_FALSE(wound());
}

TEST_CASE("a scale bar is round and true") {
  Draw draw(1);
  for (int i = 0; i < 1000; ++i) {
    View view;
    view.width_px = 800 + static_cast<int>(draw.below(3000));
    view.camera.distance_mm = std::exp(draw.between(-1.0, 8.0));
    view.units = draw.below(2) == 0 ? Units::metric : Units::inch;
    const ScaleBar bar = make_scale_bar(view);
    CHECK(bar.length_px * mm_per_px(view) == Approx(bar.length_mm));
    CHECK(bar.length_px <= 0.2 * view.width_px * (1.0 + 1e-9));
    CHECK(bar.length_px > 0.2 * view.width_px / 2.51);
    const double unit = view.units == Units::metric ? 1.0 : 25.4;
    std::string text = bar.text;
    std::erase(text, ',');  // between thousands
    CHECK(std::stod(text) == Approx(bar.length_mm / unit));
    const double digits = bar.length_mm / unit / std::pow(10.0, std::floor(std::log10(bar.length_mm / unit) + 1e-9));
    CHECK((digits == Approx(1.0) || digits == Approx(2.0) || digits == Approx(5.0)));
  }
}

TEST_CASE("strands are the fiber that the shell shows, and its neighbours along the fiber") {
  for (std::uint64_t seed = 600; seed < 606; ++seed) {
    const SceneSource source = random_source(seed);
    const Shell shell = make_shell(source, {});
    const double width = source.plan().spool().inside_width_mm;
    const SurfaceWindow window{0.3 * width, 0.6 * width, {1.0, 2.5}};
    std::set<std::uint32_t> wanted;
    for (std::size_t row = 0; row < shell.grid.rows; ++row) {
      if (shell.grid.angle(row) < 1.0 || shell.grid.angle(row) > 2.5) continue;
      for (std::size_t c = 0; c < shell.grid.columns; ++c) {
        const double x = shell.grid.x(c);
        const std::uint32_t node = shell.node[shell.index(row, c)];
        if (x > window.x_from_mm && x < window.x_to_mm && node != no_node) wanted.insert(node);
      }
    }
    const Strands strands = make_strands(source, {}, shell, window);
    REQUIRE(strands.complete);
    std::set<std::uint32_t> found;
    std::size_t points = 0;
    for (const StrandRun& run : strands.runs) {
      CHECK(run.first == points);
      points += run.count;
      for (std::uint32_t i = run.first; i < run.first + run.count; ++i) {
        const StrandPoint& point = strands.points[i];
        CHECK(found.insert(point.node).second);
        CHECK(point.x_mm == static_cast<float>(source.build().nodes.x(point.node)));
        if (i > run.first) CHECK(point.node == strands.points[i - 1].node + 1);
      }
    }
    CHECK(points == strands.points.size());
    const std::size_t last = source.build().nodes.size() - 1;
    for (const std::uint32_t node : wanted) {
      CHECK(found.count(node) == 1);
      if (node > 0) CHECK(found.count(node - 1) == 1);
      if (node < last) CHECK(found.count(node + 1) == 1);
    }
    CHECK(found.size() <= 3 * wanted.size());
    const Strands none = make_strands(source, {}, shell, window, wanted.size() / 2);
    CHECK_FALSE(none.complete);
    CHECK(none.points.empty());
  }
}

TEST_CASE("turns are found by their extents") {
  for (std::uint64_t seed = 610; seed < 614; ++seed) {
    const SceneSource source = random_source(seed, 400.0);
    const TurnIndex& index = source.turns();
    REQUIRE(index.turns() == (source.build().nodes.size() + source.stations() - 1) / source.stations());
    Draw draw(seed);
    for (int i = 0; i < 50; ++i) {
      const double x = draw.between(0.0, source.plan().spool().inside_width_mm);
      const TurnExtent window{x, x + draw.between(0.0, 4.0) * source.d(), 0.0, draw.between(0.5, 1.0) * 300.0};
      const std::size_t begin = draw.below(index.turns()), end = begin + draw.below(index.turns());
      std::vector<std::size_t> expected, forward, backward;
      for (std::size_t t = begin; t < std::min(end, index.turns()); ++t) {
        if (index.levels()[0][t].meets(window)) expected.push_back(t);
      }
      const auto collect = [](std::vector<std::size_t>& into) {
        return [&into](std::size_t turn) {
          into.push_back(turn);
          return true;
        };
      };
      index.for_each(window, begin, end, true, collect(forward));
      index.for_each(window, begin, end, false, collect(backward));
      CHECK(forward == expected);
      std::reverse(backward.begin(), backward.end());
      CHECK(backward == expected);
    }
  }
}

TEST_CASE("a scene of any view can be made") {
  const SceneSource source = random_source(7, 300.0);
  Draw draw(9);
  for (int i = 0; i < 40; ++i) {
    View view;
    view.first_layer = static_cast<int>(draw.below(12)) - 3;
    if (draw.below(2) == 0) view.last_layer = static_cast<int>(draw.below(12)) - 3;
    view.outside = draw.below(2) == 0 ? Outside::faded : Outside::gone;
    if (draw.below(2) == 0) view.until_turn = draw.between(-10.0, 500.0);
    if (draw.below(2) == 0) view.wedge = Sector{draw.between(-7.0, 7.0), draw.between(-7.0, 7.0)};
    if (draw.below(3) == 0) view.axial_cut_rad = draw.between(-7.0, 7.0);
    if (draw.below(3) == 0) view.x_from_mm = draw.between(-10.0, 50.0);
    if (draw.below(3) == 0) view.x_to_mm = draw.between(-10.0, 50.0);
    view.colouring = static_cast<Colouring>(draw.below(7));
    const Scene scene = make_scene(source, view);
    const bool nothing_left = is_removed(scene.removed, 0.0) && is_removed(scene.removed, 3.0) &&
                              scene.removed.front().to - scene.removed.front().from > 6.28318;
    CHECK(scene.faces.size() == (nothing_left ? 0 : 2 * scene.removed.size()));
    CHECK(scene.shell.node.size() == scene.shell.grid.texels());
    CHECK(scene.shell.openness.size() == scene.shell.grid.texels());
    for (const float radius : scene.shell.radius_mm) REQUIRE(std::isfinite(radius));
    CHECK(scene.cross_faces.size() == (view.x_from_mm ? 1U : 0U) + (view.x_to_mm ? 1U : 0U));
    const Ray ray{{0.5 * source.plan().spool().inside_width_mm, 1000.0, 0.0}, {0.0, -1.0, 0.0}};
    const auto hit = pick_fiber(source, view, ray);
    if (hit) CHECK(visible_fiber(source, view).shows(hit->node));
  }
}

TEST_CASE("gaps over the limit are lit, from turn to turn, and nothing else is") {
  const Plan plan = synthetic::plan_of(synthetic::draft());  // limit: half a diameter
  for (const double pitch : {1.2, 1.8}) {
    const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 1, 10, pitch));
    const Scene scene = make_scene(source, {});
    const ShellGrid& grid = scene.shell.grid;
    REQUIRE(scene.lit.size() == grid.texels());
    for (std::size_t row = 0; row < grid.rows; ++row) {
      for (std::size_t c = 0; c < grid.columns; ++c) {
        const double x = grid.x(c);
        const bool between = scene.shell.node[scene.shell.index(row, c)] == no_node && x < 9.0 * pitch + 0.5;
        CHECK((scene.lit[scene.shell.index(row, c)] > 0) == (pitch > 1.5 && between));
      }
    }
    View view;
    view.findings = false;
    for (const std::uint8_t lit : make_scene(source, view).lit) CHECK(lit == 0);
  }
}

TEST_CASE("turns that ride up are lit") {
  const Plan plan = synthetic::plan_of(synthetic::draft());
  // Ten turns side by side; the sixth lies on the fourth and the fifth.
  const Build build = synthetic::BuildMaker(plan, 16)
                          .stroke(1, 10.0,
                                  [](double turn) {
                                    const double step = std::floor(turn + 1e-9);
                                    const bool up = step == 5.0;
                                    return synthetic::Place{up ? 4.0 : 0.5 + step, up ? 51.4 : 50.5,
                                                            up ? Support::valley : Support::barrel, up};
                                  })
                          .finish();
  const SceneSource source = source_of(plan, build);
  const Scene scene = make_scene(source, {});
  std::size_t lit = 0;
  for (std::size_t i = 0; i < scene.lit.size(); ++i) {
    const std::uint32_t node = scene.shell.node[i];
    const bool up = node != no_node && source.build().nodes.rides_up(node);
    const bool marked = scene.lit[i] == 1 + static_cast<int>(FindingKind::ride_up);
    CHECK(up == marked);
    lit += marked ? 1U : 0U;
  }
  CHECK(lit >= 15 * 8);
}
