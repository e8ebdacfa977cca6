// Moving pictures, read back frame by frame by the library's decoder.
#include <catch2/catch.hpp>

#include <array>
#include <cstdlib>
#include <memory>
#include <vector>

#include <webp/demux.h>

#include "export/webp_animation.h"

namespace laywright {
namespace {

constexpr int width = 40, height = 30;

using Pixels = std::vector<std::uint8_t>;

Pixels filled(std::uint8_t r, std::uint8_t g, std::uint8_t b) {
  Pixels pixels;
  for (int i = 0; i < width * height; ++i) pixels.insert(pixels.end(), {r, g, b, 255});
  return pixels;
}

struct Shown {
  Pixels pixels;
  int until_ms = 0;
};

struct Played {
  int width = 0, height = 0;
  unsigned loops = 99;
  std::vector<Shown> frames;
};

Played play(const std::string& bytes) {
  const WebPData data{reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()};
  const std::unique_ptr<WebPAnimDecoder, decltype(&WebPAnimDecoderDelete)> decoder(
      WebPAnimDecoderNew(&data, nullptr), &WebPAnimDecoderDelete);
  REQUIRE(decoder);
  WebPAnimInfo info;
  REQUIRE(WebPAnimDecoderGetInfo(decoder.get(), &info) != 0);
  Played played{static_cast<int>(info.canvas_width), static_cast<int>(info.canvas_height), info.loop_count, {}};
  while (WebPAnimDecoderHasMoreFrames(decoder.get()) != 0) {
    std::uint8_t* pixels = nullptr;
    int until_ms = 0;
    REQUIRE(WebPAnimDecoderGetNext(decoder.get(), &pixels, &until_ms) != 0);
    played.frames.push_back(
        {Pixels(pixels, pixels + std::size_t{4} * info.canvas_width * info.canvas_height), until_ms});
  }
  return played;
}

int farthest(const Pixels& a, const Pixels& b) {
  int off = 0;
  for (std::size_t i = 0; i < a.size(); ++i) off = std::max(off, std::abs(a[i] - b[i]));
  return off;
}

}  // namespace

TEST_CASE("frames come back in their order, with their colours and their times") {
  const std::vector<Pixels> frames{filled(200, 30, 30), filled(30, 200, 30), filled(30, 30, 200)};
  for (const double quality : {80.0, 100.0}) {
    WebpAnimation movie({width, height, 30.0, quality});
    for (const Pixels& frame : frames) REQUIRE(movie.add(frame));
    const Played played = play(movie.finish());
    CHECK(played.width == width);
    CHECK(played.height == height);
    CHECK(played.loops == 0);  // without end
    REQUIRE(played.frames.size() == frames.size());
    // A thirtieth of a second is not a whole number of milliseconds; three of them are.
    CHECK(played.frames[0].until_ms == 33);
    CHECK(played.frames[1].until_ms == 67);
    CHECK(played.frames[2].until_ms == 100);
    for (std::size_t i = 0; i < frames.size(); ++i) {
      CHECK(farthest(played.frames[i].pixels, frames[i]) <= (quality == 100.0 ? 0 : 6));
    }
  }
}

TEST_CASE("a picture that stands still lasts as long as its frames") {
  WebpAnimation movie({width, height, 20.0, 80.0});
  REQUIRE(movie.add(filled(20, 90, 20)));
  for (int i = 0; i < 9; ++i) REQUIRE(movie.add(filled(120, 120, 120)));
  const Played played = play(movie.finish());
  REQUIRE(played.frames.size() >= 2);
  CHECK(played.frames.front().until_ms == 50);
  CHECK(played.frames.back().until_ms == 500);
}

TEST_CASE("without a frame there is no file") {
  WebpAnimation movie({width, height, 20.0, 80.0});
  CHECK(movie.finish().empty());
}

}  // namespace laywright
