// The outline in a photograph over that of the build.
#include "paper/profile_chart.h"

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

#include <catch2/catch.hpp>

#include "paper/typeset.h"

using namespace laywright;

namespace {

// A build of 200 mm, seen 1 mm thicker with a sigma of half a millimetre, from 2 to 93 of its 95 mm.
ProfileChart even_chart() {
  ProfileChart chart;
  chart.title = "Sensor fiber";
  chart.line = "The outline in a photograph at the end of the wind";
  chart.width_mm = 95.0;
  for (double x = 2.0; x < 93.01; x += 0.5) {
    chart.seen_x_mm.push_back(x);
    chart.seen_mm.push_back(201.0);
    chart.sigma_mm.push_back(0.5);
  }
  chart.build_x_mm = {0.0, 95.0};
  chart.build_mm = {200.0, 200.0};
  chart.notes = {"An estimate."};
  return chart;
}

std::vector<std::string> words_of(const Drawing& drawing) {
  std::vector<std::string> words;
  for (const Drawing::Item& item : drawing.items)
    if (const auto* text = std::get_if<Text>(&item)) words.push_back(text->words);
  return words;
}

bool has(const std::vector<std::string>& words, const std::string& wanted) {
  return std::find(words.begin(), words.end(), wanted) != words.end();
}

std::vector<Shape> shapes_of(const Drawing& drawing, std::size_t points, bool closed) {
  std::vector<Shape> found;
  for (const Drawing::Item& item : drawing.items) {
    const auto* shape = std::get_if<Shape>(&item);
    if (shape != nullptr && shape->points.size() == points && shape->closed == closed) found.push_back(*shape);
  }
  return found;
}

}  // namespace

TEST_CASE("profile chart: curve, band and build stand in one scale") {
  const ProfileChart chart = even_chart();
  const std::size_t count = chart.seen_mm.size();
  const Drawing drawing = profile_chart(chart);
  const auto curves = shapes_of(drawing, count, false), bands = shapes_of(drawing, 2 * count, true);
  REQUIRE(curves.size() == 1);
  REQUIRE(bands.size() == 1);
  const Point first = curves[0].points.front(), last = curves[0].points.back();
  // The build is the dashed line from flange to flange.
  Shape build;
  for (const Shape& line : shapes_of(drawing, 2, false))
    if (line.pen && !line.pen->dashes_mm.empty() && line.points[1].x - line.points[0].x > last.x - first.x)
      build = line;
  REQUIRE(build.points.size() == 2);
  const double mm = build.points[0].y - first.y;  // of paper, for one of diameter
  CHECK(mm > 5.0);
  CHECK(first.y - bands[0].points.front().y == Approx(0.5 * mm));
  CHECK(bands[0].points.back().y - first.y == Approx(0.5 * mm));
  const double across = (build.points[1].x - build.points[0].x) / 95.0;
  CHECK(first.x - build.points[0].x == Approx(2.0 * across));
  CHECK(last.x - first.x == Approx(91.0 * across));
}

TEST_CASE("profile chart: axes in mm, a legend of what is drawn, and notes") {
  ProfileChart chart = even_chart();
  const auto words = words_of(profile_chart(chart));
  CHECK(has(words, "outer diameter, mm"));
  CHECK(has(words, "along the axis from the left flange, mm"));
  CHECK(has(words, "photograph, one sigma to either side"));
  CHECK(has(words, "build: mean of crests round the spool"));
  CHECK(has(words, "hidden by the flanges' rims"));
  CHECK(has(words, "An estimate."));
  CHECK(has(words, "200"));
  chart.build_mm.clear();
  chart.build_x_mm.clear();
  CHECK_FALSE(has(words_of(profile_chart(chart)), "build: mean of crests round the spool"));
  chart.build_levels = {{0.0, 4.75, 200.0}, {23.75, 71.25, 200.0}, {90.25, 95.0, 200.0}};
  CHECK(has(words_of(profile_chart(chart)), "build: left, middle, right"));
}

TEST_CASE("profile chart: no words leave the page, and those in a row do not meet") {
  const Drawing drawing = profile_chart(even_chart());
  for (const Drawing::Item& item : drawing.items) {
    const auto* text = std::get_if<Text>(&item);
    if (text == nullptr || text->upward) continue;
    const double width = width_of(text->words, {text->height_mm, text->bold, text->align, text->color});
    const double from = text->at.x - (text->align == Align::end      ? width
                                      : text->align == Align::middle ? width / 2
                                                                     : 0.0);
    CAPTURE(text->words);
    CHECK(from >= 0.0);
    CHECK(from + width <= drawing.width_mm);
    CHECK(text->at.y < drawing.height_mm);
    for (const Drawing::Item& other : drawing.items) {
      const auto* next = std::get_if<Text>(&other);
      if (next == nullptr || next->upward || next->at.y != text->at.y || next->at.x <= text->at.x) continue;
      if (text->align == Align::start && next->align == Align::start) CHECK(from + width < next->at.x);
    }
  }
}
