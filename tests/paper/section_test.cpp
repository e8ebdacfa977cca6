#include <cmath>

#include <catch2/catch.hpp>

#include "figures/hand_wound.h"
#include "paper/colors.h"
#include "paper/section_cut.h"
#include "paper/section_view.h"
#include "paper/typeset.h"

using namespace laywright;

TEST_CASE("a section shows each turn that passes the station, by layer") {
  const SectionCut cut = cut_section(hand_plan(), hand_build(), 90.0);
  CHECK(cut.angle_deg == 90.0);
  REQUIRE(cut.turns.size() == 18);
  // A quarter of a turn after the start, the helix of pitch 1 has come a quarter of a millimetre.
  CHECK(cut.turns[0].x_mm == Approx(0.75));
  CHECK(cut.turns[0].r_mm == Approx(10.5));
  CHECK(cut.turns[0].layer == 1);
  CHECK(cut.turns[8].x_mm == Approx(8.75));
  CHECK(cut.turns[8].layer == 1);
  CHECK(cut.turns[9].x_mm == Approx(9.25));
  CHECK(cut.turns[9].r_mm == Approx(11.5));
  CHECK(cut.turns[9].layer == 2);
}

TEST_CASE("the nearest station is cut, whatever the angle") {
  const Plan plan = hand_plan();
  const Build build = hand_build();
  CHECK(cut_section(plan, build, 100.0).angle_deg == 90.0);
  CHECK(cut_section(plan, build, -90.0).angle_deg == 270.0);
  CHECK(cut_section(plan, build, 359.0).angle_deg == 0.0);
  CHECK(cut_section(plan, build, 720.0 + 45.0).angle_deg == 45.0);
}

TEST_CASE("flange faces open with their taper from where they meet the barrel") {
  const double taper = 5.0 / 180.0 * std::acos(-1.0);
  const SectionCut cut = cut_section(hand_plan(taper), hand_build(), 0.0);
  CHECK(cut.left_face(10.0) == Approx(0.0).margin(1e-12));
  CHECK(cut.right_face(10.0) == Approx(10.0));
  // tan 5 deg = 0.087489 (table of tangents), over the 10 mm from barrel to rim.
  CHECK(cut.left_face(20.0) == Approx(-0.87489).epsilon(1e-4));
  CHECK(cut.right_face(20.0) == Approx(10.87489).epsilon(1e-4));
  CHECK(cut.rim_radius_mm == 20.0);
}

TEST_CASE("the surface of a section is that of its highest turn there, or the barrel") {
  const Plan plan = hand_plan();
  CHECK(cut_section(plan, hand_build(), 0.0).surface_radius(0.0, 10.0) == Approx(12.0));
  CHECK(cut_section(plan, helical_build(1, 4, 1.0, 10.5, 0.0), 0.0).surface_radius(6.0, 10.0) == Approx(10.0));
}

TEST_CASE("a view places millimetres of the spool on the page, upward") {
  const SectionView view{-1.0, 11.0, 9.0, 21.0, {20.0, 150.0}, 5.0};
  CHECK(view.at(-1.0, 9.0).x == 20.0);
  CHECK(view.at(-1.0, 9.0).y == 150.0);
  CHECK(view.at(1.0, 19.0).x == 30.0);
  CHECK(view.at(1.0, 19.0).y == 100.0);
  CHECK(view.box().top == 90.0);
  CHECK(view.box().right() == 80.0);
}

TEST_CASE("layers go from dark to light: no two of a wind are of one colour, every other one is lighter") {
  // Relative luminance: W3C, Web Content Accessibility Guidelines 2.1.
  const auto luminance = [](const Color& c) {
    const auto linear = [](double v) { return v <= 0.03928 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
    return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
  };
  for (const std::size_t layers : {2UL, 7UL, 12UL, 40UL}) {
    CAPTURE(layers);
    CHECK(luminance(layer_color(layers, layers)) > luminance(layer_color(1, layers)) + 0.15);
    for (std::size_t layer = 1; layer + 2 <= layers; ++layer) {
      CAPTURE(layer);
      CHECK(luminance(layer_color(layer + 2, layers)) > luminance(layer_color(layer, layers)));
    }
  }
}

TEST_CASE("numbers of layers stand on their own turns, in the middle of a section") {
  const SectionCut cut = cut_section(hand_plan(), hand_build(), 0.0);
  REQUIRE(cut.layers == 2);
  const SectionView view{-1.0, 11.0, 9.0, 21.0, {0.0, 120.0}, 10.0};
  Drawing drawing;
  draw_layer_numbers(drawing, cut, view);
  std::vector<Text> numbers;
  for (const Drawing::Item& item : drawing.items)
    if (const Text* text = std::get_if<Text>(&item)) numbers.push_back(*text);
  REQUIRE(numbers.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(numbers[i].words == std::to_string(i + 1));
    // Half a millimetre above the barrel, and one more: by the hand's build.
    CHECK(numbers[i].at.y == Approx(view.at(0.0, 10.5 + static_cast<double>(i)).y).margin(1.5));
    CHECK(std::abs(numbers[i].at.x - view.at(5.0, 0.0).x) < 10.0);
  }
  // Where layers are thin, there is room for every second only.
  Drawing small;
  draw_layer_numbers(small, cut, {-1.0, 11.0, 9.0, 21.0, {0.0, 36.0}, 3.0});
  int count = 0;
  for (const Drawing::Item& item : small.items) count += std::holds_alternative<Text>(item) ? 1 : 0;
  CHECK(count == 1);
}

TEST_CASE("a title of any length stays on the page: smaller first, then with an ellipsis") {
  for (const std::size_t length : {std::size_t{5}, longest_title, std::size_t{1000}}) {
    CAPTURE(length);
    Drawing drawing;
    drawing.title = std::string(length, 'e');
    put_title(drawing, {12.0, 17.0});
    const Text& line = std::get<Text>(drawing.items.back());
    CHECK(width_of(line.words, {line.height_mm, line.bold, line.align, line.color}) <=
          drawing.width_mm - 24.0 + 1e-6);
    CHECK(line.height_mm <= 5.0);
    CHECK(line.height_mm >= 2.5);
    CHECK((line.words == drawing.title) == (length <= longest_title));
    if (length > longest_title) CHECK(line.words.ends_with("\u2026"));
  }
}
