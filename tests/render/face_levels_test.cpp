// What lies between fibers of a cut's face, and its coarser levels.
#include <catch2/catch.hpp>

#include <set>

#include "render/face_levels.h"
#include "render/face_picture.h"

using namespace laywright;

namespace {

// Layers one above the other, each so many pixels high, of one grey.
FaceImage layers_of(std::size_t width, std::size_t layers, std::size_t high) {
  FaceImage image;
  image.width = width;
  image.height = layers * high;
  image.px_mm = 1.0;
  image.fiber_diameter_mm = static_cast<double>(high);
  for (std::size_t y = 0; y < image.height; ++y) {
    for (std::size_t x = 0; x < width; ++x) {
      image.colour.push_back({100, 100, 100, 255});
      image.layer.push_back(static_cast<std::uint16_t>(y / high + 1));
    }
  }
  return image;
}

std::vector<int> column(const FaceLevel& level) {
  std::vector<int> values;
  for (int y = 0; y < level.height; ++y)
    values.push_back(level.colour[static_cast<std::size_t>(y) * static_cast<std::size_t>(level.width)].r);
  return values;
}

}  // namespace

TEST_CASE(
    "voids are dark up to the outermost pixel that is half fiber, and clear above it, in rows and in columns") {
  const Rgba none{0, 0, 0, 0}, fiber{200, 100, 50, 255}, most{200, 100, 50, 200}, little{200, 100, 50, 100};
  const std::vector<Rgba> upward{none, fiber, none, most, little, none};
  const auto is_right = [&](const std::vector<Rgba>& filled, std::size_t along) {
    for (const std::size_t i : {0U, 1U, 2U, 3U}) CHECK(filled[i * along].a == 255);
    for (const std::size_t i : {4U, 5U}) CHECK(filled[i * along] == none);
    CHECK(filled[along] == fiber);
    const Rgba shade = filled[0];
    CHECK(shade == filled[2 * along]);
    CHECK(shade.r < 60);
    // 200 parts fiber, 55 parts shade.
    CHECK(filled[3 * along].r == (200 * 200 + shade.r * 55 + 127) / 255);
  };
  is_right(fill_voids(upward, 6, 1, 1, 6), 1);
  std::vector<Rgba> beside;  // two columns, the second empty
  for (const Rgba& pixel : upward) {
    beside.push_back(pixel);
    beside.push_back(none);
  }
  const std::vector<Rgba> filled = fill_voids(beside, 6, 2, 2, 1);
  is_right(filled, 2);
  for (std::size_t i = 1; i < filled.size(); i += 2) CHECK(filled[i] == none);
}

TEST_CASE("groups of layers are four pixels high at least, of round numbers") {
  // A nested layer rises sin 60 degrees of a fiber.
  CHECK(layers_in_group(1.0) == 5);    // 4.3 px
  CHECK(layers_in_group(0.9) == 10);   // 5 would make 3.9
  CHECK(layers_in_group(0.5) == 10);   // 4.35
  CHECK(layers_in_group(0.25) == 20);  // 4.35
  CHECK(layers_in_group(0.1) == 50);
  CHECK(layers_in_group(0.01) == 500);
}

TEST_CASE("where fibers are thick enough to be seen, levels are plain means") {
  const FaceImage image = layers_of(8, 8, 8);
  const std::vector<FaceLevel> levels = face_levels(image.colour, image);
  for (std::size_t i = 0; i < 3; ++i) {  // fibers of 8, 4 and 2 pixels
    CHECK(levels[i].width == 8 >> i);
    for (const int value : column(levels[i])) CHECK(value == 100);
  }
  CHECK(levels.back().width == 1);
  CHECK(levels.back().height == 1);
}

TEST_CASE("where they are not, groups of layers are told apart, brighter and darker by turns") {
  const FaceImage image = layers_of(4, 60, 2);
  const std::vector<FaceLevel> levels = face_levels(image.colour, image);
  // Fibers of one pixel: groups of five.
  const std::vector<int> rows = column(levels[1]);
  REQUIRE(rows.size() == 60);
  for (std::size_t y = 0; y < rows.size(); ++y) {
    INFO(y);
    CHECK((y / 5 % 2 == 0 ? rows[y] > 115 : rows[y] < 80));
  }
  // Fibers of half a pixel: groups of ten, five rows high.
  const std::vector<int> coarser = column(levels[2]);
  for (std::size_t y = 0; y < coarser.size(); ++y) CHECK((y / 5 % 2 == 0 ? coarser[y] > 115 : coarser[y] < 80));

  FaceImage otherwise = image;
  otherwise.layer.clear();  // colours tell something else: they must not be touched
  for (const FaceLevel& level : face_levels(otherwise.colour, otherwise)) {
    for (const int value : column(level)) CHECK(value == 100);
  }
}

TEST_CASE("a level is the mean of the one before it, for odd sizes as well") {
  FaceImage image;
  image.width = 5;
  image.height = 3;
  image.px_mm = 1.0;
  image.fiber_diameter_mm = 100.0;
  for (std::size_t i = 0; i < 15; ++i) image.colour.push_back({static_cast<std::uint8_t>(10 * i), 0, 0, 255});
  const std::vector<FaceLevel> levels = face_levels(image.colour, image);
  REQUIRE(levels.size() == 3);
  CHECK(levels[1].width == 2);
  CHECK(levels[1].height == 1);
  CHECK(levels[1].colour[0].r == 30);  // of 0, 10, 50, 60
  CHECK(levels[1].colour[1].r == 50);  // of 20, 30, 70, 80
  CHECK(levels[2].colour[0].r == 40);
}
