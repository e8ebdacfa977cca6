// Cut faces against a search through all turns.
#include <catch2/catch.hpp>

#include <map>
#include <numbers>

#include "scene/palette.h"
#include "scenes.h"

using namespace laywright;
using scenes::Draw;
using scenes::random_source;
using scenes::source_of;

namespace {

// Straight between the two nodes beside the angle, for every turn.
std::map<std::uint32_t, std::pair<double, double>> search(const SceneSource& source, double angle, std::size_t begin,
                                                          std::size_t end) {
  std::map<std::uint32_t, std::pair<double, double>> found;
  const NodeStore& nodes = source.build().nodes;
  const double per_station = 2.0 * std::numbers::pi / static_cast<double>(source.stations());
  for (std::size_t k = begin; k + 1 < end; ++k) {
    const double share = angle / per_station - static_cast<double>(k % source.stations());
    if (share <= 1e-7 || share >= 1.0 - 1e-7) continue;
    found[static_cast<std::uint32_t>(k)] = {nodes.x(k) + share * (nodes.x(k + 1) - nodes.x(k)),
                                            nodes.r(k) + share * (nodes.r(k + 1) - nodes.r(k))};
  }
  return found;
}

}  // namespace

TEST_CASE("a face has exactly the turns that cross its plane, where they cross it") {
  for (std::uint64_t seed = 100; seed < 112; ++seed) {
    const SceneSource source = random_source(seed);
    Draw draw(seed);
    const double angle = draw.between(0.0, 2.0 * std::numbers::pi);
    View view;
    view.first_layer = 1 + static_cast<int>(draw.below(2));
    view.until_turn = draw.between(0.4, 1.0) * source.build().turns;
    const VisibleFiber fiber = visible_fiber(source, view);
    const auto expected = search(source, angle, fiber.first, fiber.end);
    const auto discs = face_discs(source, view, angle, whole_face(source));
    INFO("seed " << seed);
    REQUIRE(discs.size() == expected.size());
    std::uint32_t before = 0;
    for (const FaceDisc& disc : discs) {
      const auto found = expected.find(disc.node);
      REQUIRE(found != expected.end());
      CHECK(static_cast<double>(disc.x_mm) == Approx(found->second.first).margin(1e-5 * source.d()));
      CHECK(static_cast<double>(disc.r_mm) == Approx(found->second.second).epsilon(1e-6));
      CHECK(disc.colour == layer_rgba(source.build().stroke_of(disc.node) + 1, source.build().strokes.size()));
      CHECK(disc.node >= before);
      before = disc.node;
    }
  }
}

TEST_CASE("a face at a station has its nodes") {
  const SceneSource source = random_source(5);
  for (const std::size_t station : {std::size_t{0}, std::size_t{1}, source.stations() - 1}) {
    const double angle =
        2.0 * std::numbers::pi * static_cast<double>(station) / static_cast<double>(source.stations());
    const auto discs = face_discs(source, {}, angle, whole_face(source));
    CHECK(discs.size() == (source.build().nodes.size() - station - 1) / source.stations() + 1);
    for (const FaceDisc& disc : discs) {
      REQUIRE(disc.node % source.stations() == station);
      REQUIRE(disc.x_mm == static_cast<float>(source.build().nodes.x(disc.node)));
    }
  }
}

TEST_CASE("a window onto a face has the circles that reach into it, and no others") {
  std::size_t inside = 0, outside = 0;
  for (std::uint64_t seed = 120; seed < 130; ++seed) {
    const SceneSource source = random_source(seed);
    Draw draw(seed);
    const FaceWindow whole = whole_face(source);
    const double radius = 0.5 * source.d();
    for (int i = 0; i < 5; ++i) {
      const double angle = draw.between(0.0, 6.28);
      FaceWindow window;
      window.x_from = draw.between(whole.x_from, whole.x_to);
      window.x_to = window.x_from + draw.between(0.0, 8.0) * source.d();
      window.r_from = draw.between(whole.r_from, whole.r_from + 4.0 * source.d());
      window.r_to = window.r_from + draw.between(0.0, 3.0) * source.d();
      const auto discs = face_discs(source, {}, angle, window);
      std::size_t next = 0;
      for (const FaceDisc& disc : face_discs(source, {}, angle, whole)) {
        const double x = static_cast<double>(disc.x_mm), r = static_cast<double>(disc.r_mm);
        const double dx = x - std::clamp(x, window.x_from, window.x_to);
        const double dr = r - std::clamp(r, window.r_from, window.r_to);
        const bool reaches = std::hypot(dx, dr) <= radius;
        (reaches ? inside : outside) += 1;
        const bool found = next < discs.size() && discs[next].node == disc.node;
        if (std::abs(std::hypot(dx, dr) - radius) > 1e-4 * source.d()) REQUIRE(found == reaches);
        next += found ? 1 : 0;
      }
      CHECK(next == discs.size());
    }
  }
  CHECK(inside > 100);
  CHECK(outside > 100);
}

TEST_CASE("layers outside the chosen ones stay on a face when they fade") {
  const SceneSource source = random_source(7, 300.0);
  View view;
  view.first_layer = 2;
  view.last_layer = 3;
  const auto gone = face_discs(source, view, 1.0, whole_face(source));
  view.outside = Outside::faded;
  const auto all = face_discs(source, view, 1.0, whole_face(source));
  CHECK(all.size() == face_discs(source, {}, 1.0, whole_face(source)).size());
  CHECK(gone.size() < all.size());
  for (const FaceDisc& disc : all) {
    const std::size_t layer = source.build().stroke_of(disc.node) + 1;
    const Rgba own = layer_rgba(layer, source.build().strokes.size());
    CHECK(disc.colour == (layer == 2 || layer == 3 ? own : faded(own, Theme::light)));
  }
}

TEST_CASE("the image of a face is covered by as much as the circles' area") {
  const SceneSource source = random_source(7, 300.0);
  for (const double px_per_d : {8.0, 4.0, 1.5, 0.4}) {
    FaceImageSettings settings;
    settings.px_per_d = px_per_d;
    const FaceImage image = face_image(source, {}, 2.0, whole_face(source), settings);
    const double circles = static_cast<double>(face_discs(source, {}, 2.0, whole_face(source)).size());
    double covered = 0.0;
    for (const Rgba& colour : image.colour) covered += colour.a / 255.0;
    const double area = circles * std::numbers::pi / 4.0 * source.d() * source.d();
    INFO(px_per_d << " px per d");
    // The edge is a pixel wide: two parts in a hundred too much at four pixels per fiber.
    CHECK(covered * image.px_mm * image.px_mm == Approx(area).epsilon(0.025));
  }
}

TEST_CASE("a pixel of a face names the turn that covers its middle") {
  const SceneSource source = random_source(7, 300.0);
  const FaceImage image = face_image(source, {}, 2.0, whole_face(source));
  const auto discs = face_discs(source, {}, 2.0, whole_face(source));
  std::size_t checked = 0;
  for (const FaceDisc& disc : discs) {
    const auto i = static_cast<std::size_t>((static_cast<double>(disc.x_mm) - image.window.x_from) / image.px_mm);
    const auto j = static_cast<std::size_t>((static_cast<double>(disc.r_mm) - image.window.r_from) / image.px_mm);
    REQUIRE(i < image.width);
    REQUIRE(j < image.height);
    CHECK(image.node[j * image.width + i] == disc.node);
    CHECK(image.colour[j * image.width + i] == disc.colour);
    ++checked;
  }
  CHECK(checked > 100);
}

TEST_CASE("the size of a face's image is bounded") {
  const SceneSource source = random_source(7);
  FaceImageSettings settings;
  settings.most_px = 1000;
  const FaceImage image = face_image(source, {}, 2.0, whole_face(source), settings);
  CHECK(image.width * image.height <= 1100);  // a started row and column beyond
  CHECK(image.px_mm > source.d() / 4.0);
}

TEST_CASE("a cut across the axis shows the chords of the turns that it meets") {
  const Plan plan = synthetic::plan_of(synthetic::draft());
  const SceneSource source = source_of(plan, synthetic::nested(plan, 16, 1, 20, 1.0));
  // A quarter of a diameter beside the middle of turn 7: a chord of sqrt(3)/2 d.
  const CrossFace face = cross_face(source, {}, 7.75, true);
  for (std::size_t row = 0; row < face.rows; ++row) {
    double length = 0.0;
    for (std::size_t c = 0; c < face.columns; ++c) {
      const std::size_t at = row * face.columns + c;
      length += face.colour[at].a / 255.0 * face.px_mm;
      const bool named = face.node[at] != no_node;
      CHECK(named == (face.colour[at].a > 0));
      if (named) CHECK(face.node[at] == 7 * 16 + row);
    }
    CHECK(length == Approx(0.5 * std::sqrt(3.0)).margin(0.01));
  }
}

TEST_CASE("sectors that are removed: wedge, axial cut, and both") {
  const double turn = 2.0 * std::numbers::pi;
  Draw draw(1);
  for (int i = 0; i < 2000; ++i) {
    View view;
    if (draw.below(4) > 0) view.wedge = Sector{draw.between(-10.0, 10.0), draw.between(-10.0, 10.0)};
    if (draw.below(2) > 0) view.axial_cut_rad = draw.between(-10.0, 10.0);
    const std::vector<Sector> removed = removed_sectors(view);
    REQUIRE(removed.size() <= 2);
    for (const Sector& sector : removed) {
      REQUIRE(sector.from >= 0.0);
      REQUIRE(sector.from < turn);
      REQUIRE(sector.to > sector.from);
      REQUIRE(sector.to <= sector.from + turn + 1e-12);
    }
    const auto within = [&](double angle, double from, double span) {
      const double past = (angle - from) / turn;
      return (past - std::floor(past)) * turn < span;
    };
    const double angle = draw.between(0.0, turn);
    bool expected = view.axial_cut_rad && within(angle, *view.axial_cut_rad, std::numbers::pi);
    if (view.wedge) {
      const double span = view.wedge->to - view.wedge->from;
      const double part = std::abs(span) >= turn ? turn : span < 0.0 ? span + turn : span;
      expected = expected || within(angle, view.wedge->from, part);
    }
    REQUIRE(is_removed(removed, angle) == expected);
  }
}
