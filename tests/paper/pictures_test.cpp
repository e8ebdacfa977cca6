// The sinks, held against readers that this project did not write: libpng and libxml2's xmllint.
#include <cmath>
#include <cstdlib>
#include <fstream>

#include <png.h>
#include <catch2/catch.hpp>

#include "figures/hand_wound.h"
#include "paper/cairo_sink.h"
#include "paper/colors.h"
#include "paper/drafting.h"
#include "paper/section_sheet.h"
#include "paper/section_view.h"
#include "temporary_folder.h"

using namespace laywright;

namespace {

struct Picture {
  std::size_t width = 0, height = 0;
  std::vector<unsigned char> rgb;

  [[nodiscard]] std::array<int, 3> at(std::size_t x, std::size_t y) const {
    const std::size_t i = 3 * (y * width + x);
    return {rgb[i], rgb[i + 1], rgb[i + 2]};
  }
};

Picture read_png(const std::string& bytes) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  REQUIRE(png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) != 0);
  image.format = PNG_FORMAT_RGB;
  Picture picture{image.width, image.height, std::vector<unsigned char>(PNG_IMAGE_SIZE(image))};
  REQUIRE(png_image_finish_read(&image, nullptr, picture.rgb.data(), 0, nullptr) != 0);
  return picture;
}

std::array<int, 3> bytes_of(const Color& color) {
  const auto byte = [](double v) { return static_cast<int>(std::lround(v * 255.0)); };
  return {byte(color.red), byte(color.green), byte(color.blue)};
}

bool well_formed(const std::string& xml) {
  const testing::TemporaryFolder folder;
  const std::string file = folder.file("picture.svg", xml);
  const int status = std::system(("xmllint --noout --nonet '" + file + "' 2>/dev/null").c_str());
  return status == 0;
}

}  // namespace

TEST_CASE("a PNG has the size of the page at its resolution") {
  Drawing drawing;
  drawing.width_mm = 50.8;
  drawing.height_mm = 25.4;
  const Picture picture = read_png(to_png(drawing, 100.0));
  CHECK(picture.width == 200);
  CHECK(picture.height == 100);
  CHECK(picture.at(100, 50) == std::array<int, 3>{255, 255, 255});
}

TEST_CASE("each turn is a circle of its diameter, at its place, in its layer's colour") {
  const Plan plan = hand_plan();
  const SectionCut cut = cut_section(plan, hand_build(), 0.0);
  Drawing drawing;
  drawing.width_mm = 120.0;
  drawing.height_mm = 120.0;
  const SectionView view{-1.0, 11.0, 9.0, 21.0, {0.0, 120.0}, 10.0};
  draw_section(drawing, cut, view);
  const Picture picture = read_png(to_png(drawing, 254.0));  // 10 pixels to the mm of page, 100 to that of spool
  const auto pixel = [&](double x_mm, double r_mm) {
    const Point p = view.at(x_mm, r_mm);
    return picture.at(static_cast<std::size_t>(p.x * 10.0), static_cast<std::size_t>(p.y * 10.0));
  };
  for (const SectionCut::Turn& turn : cut.turns) {
    CAPTURE(turn.x_mm, turn.r_mm);
    CHECK(pixel(turn.x_mm, turn.r_mm) == bytes_of(layer_color(turn.layer, cut.layers)));
    // Just inside its edge, the dark rim; to either side of a crosswise diameter.
    CHECK(pixel(turn.x_mm + 0.34, turn.r_mm + 0.34) == bytes_of(ink));
    CHECK(pixel(turn.x_mm - 0.34, turn.r_mm - 0.34) == bytes_of(ink));
  }
  // Nothing over the wound surface.
  CHECK(pixel(5.0, 13.0) == std::array<int, 3>{255, 255, 255});
}

TEST_CASE("the SVG of a section is well-formed and small") {
  CHECK_FALSE(well_formed("<svg><g></svg>"));
  const std::string svg = to_svg(draw_section_sheet(hand_plan(), hand_build(), hand_measurements(), 0.0));
  CHECK(well_formed(svg));
  CHECK(svg.find("297mm") != std::string::npos);
  // 50,000 turns in a section (twice, with the details) stay within what a viewer opens easily.
  const std::string many =
      to_svg(draw_section_sheet(hand_plan(), helical_build(100, 500, 0.02, 10.5, 0.09), hand_measurements(), 0.0));
  CHECK(well_formed(many));
  CHECK(many.size() < 12'000'000);
}

TEST_CASE("a section sheet can be drawn of what is hardly there") {
  const Plan plan = hand_plan();
  const Build one_turn = helical_build(1, 1, 1.0, 10.5, 0.0);
  const Picture picture = read_png(to_png(draw_section_sheet(plan, one_turn, Measurements(), 0.0), 50.0));
  CHECK(picture.width == 585);
}
