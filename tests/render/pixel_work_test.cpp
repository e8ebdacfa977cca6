// What the software painter does to pixels, against the same sums in floating point (blending: "over" of premultiplied
// colours, Porter and Duff 1984).
#include <catch2/catch.hpp>

#include <cmath>

#include "render/pixel_work.h"

using namespace laywright;

namespace {

// Premultiplied, all opacities.
Pixels noise(int width, int height, std::uint32_t seed) {
  Pixels pixels;
  pixels.resize(width, height);
  for (std::size_t i = 0; i < pixels.bytes.size(); i += 4) {
    const auto next = [&] { return (seed = seed * 1664525U + 1013904223U) >> 24; };
    const std::uint32_t cover = next() % 3 == 0 ? 0 : (next() % 2 == 0 ? 255 : next());
    for (std::size_t c = 0; c < 3; ++c) pixels.bytes[i + c] = static_cast<std::uint8_t>(next() * cover / 255);
    pixels.bytes[i + 3] = static_cast<std::uint8_t>(cover);
  }
  return pixels;
}

}  // namespace

TEST_CASE("the mean of pictures is rounded to the nearest") {
  PixelMean mean;
  std::vector<Pixels> pictures;
  for (std::uint32_t count = 1; count <= 16; ++count) {
    pictures.push_back(noise(31, 7, count));
    mean.clear();
    for (const Pixels& picture : pictures) mean.add(picture);
    Pixels result;
    mean.write(result);
    int wrong = 0;
    for (std::size_t i = 0; i < result.bytes.size(); ++i) {
      double sum = 0.0;
      for (const Pixels& picture : pictures) sum += picture.bytes[i];
      if (result.bytes[i] != std::floor(sum / count + 0.5 + 1e-9)) ++wrong;
    }
    CHECK(wrong == 0);
  }
}

TEST_CASE("enlarging keeps an even picture, and a slope is a slope") {
  Pixels even;
  even.resize(5, 3);
  std::fill(even.bytes.begin(), even.bytes.end(), std::uint8_t{201});
  Pixels large;
  large.resize(17, 10);
  enlarge(even, large);
  CHECK(std::all_of(large.bytes.begin(), large.bytes.end(), [](std::uint8_t byte) { return byte == 201; }));

  Pixels slope;
  slope.resize(8, 4);
  for (int y = 0; y < 4; ++y)
    for (int x = 0; x < 8; ++x)
      for (int c = 0; c < 4; ++c) slope.row(y)[4 * x + c] = static_cast<std::uint8_t>(20 * x + 10 * y);
  large.resize(16, 8);
  enlarge(slope, large);
  for (int y = 1; y < 7; ++y)
    for (int x = 1; x < 15; ++x) {
      // The middle of a pixel of the larger picture, in pixels of the smaller one.
      const double expected = 20.0 * ((x + 0.5) / 2 - 0.5) + 10.0 * ((y + 0.5) / 2 - 0.5);
      CHECK(std::abs(large.row(y)[4 * x] - expected) <= 1.5);
    }
}

TEST_CASE("a ground shows where the picture is clear, and as much of it as the picture leaves") {
  const Pixels before = noise(64, 33, 5);
  Pixels pixels = before;
  const glm::vec3 foot(0.2F, 0.4F, 0.6F), top(0.9F, 0.5F, 0.1F);
  lay_ground(pixels, foot, top);
  int wrong = 0;
  for (int y = 0; y < pixels.height; ++y)
    for (int x = 0; x < pixels.width; ++x) {
      const std::uint8_t *was = before.row(y) + 4 * x, *is = pixels.row(y) + 4 * x;
      if (is[3] != 255) ++wrong;
      for (int c = 0; c < 3; ++c) {
        const double ground =
            255.0 * static_cast<double>(glm::mix(foot, top, (static_cast<float>(y) + 0.5F) / 33.0F)[c]);
        const double expected = was[c] + (1.0 - was[3] / 255.0) * ground;
        if (std::abs(is[c] - expected) > 1.1) ++wrong;
      }
    }
  CHECK(wrong == 0);
}

TEST_CASE("words lie over the picture where they are, upright, and nothing else changes") {
  Canvas canvas(100, 70);
  canvas.box({10, 5}, {20, 10}, 0.0, {glm::vec3(1.0F, 0.0F, 0.0F), 1.0});
  canvas.box({80, 60}, {20, 10}, 0.0, {glm::vec3(0.0F, 0.0F, 1.0F), 0.5});
  const std::vector<Tile> tiles = inked_tiles(canvas);
  int covered = 0;
  for (const Tile& tile : tiles) covered += tile.width * tile.height;
  CHECK(covered < 100 * 70 / 2);
  Pixels pixels;
  pixels.resize(100, 70);
  std::fill(pixels.bytes.begin(), pixels.bytes.end(), std::uint8_t{255});
  lay_words(pixels, canvas, tiles);
  const auto at = [&](int x, int y_down, int c) { return int{pixels.row(69 - y_down)[4 * x + c]}; };
  CHECK(at(20, 10, 0) == 255);
  CHECK(at(20, 10, 1) == 0);
  CHECK(at(20, 10, 2) == 0);
  CHECK(std::abs(at(90, 65, 0) - 128) <= 1);
  CHECK(at(90, 65, 2) == 255);
  CHECK(at(50, 35, 0) == 255);
  CHECK(at(50, 35, 1) == 255);
  canvas.clear();
  CHECK(inked_tiles(canvas).empty());
}
