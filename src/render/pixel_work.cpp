#include "render/pixel_work.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace laywright {
namespace {

std::size_t bytes_of(int width, int height) {
  return static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 4;
}

// Rounded, for products of two bytes.
std::uint32_t per_255(std::uint32_t product) { return (product + 128 + ((product + 128) >> 8)) >> 8; }

// Between which two pixels of a row (or rows of a picture) one of the larger picture lies, and the share of the second
// in 256ths.
struct Between {
  int first = 0, second = 0;
  std::uint32_t share = 0;
};

std::vector<Between> places_between(int from, int to) {
  std::vector<Between> places(static_cast<std::size_t>(to));
  for (int i = 0; i < to; ++i) {
    const double at = std::clamp((i + 0.5) * from / to - 0.5, 0.0, static_cast<double>(from - 1));
    const int first = static_cast<int>(at);
    places[static_cast<std::size_t>(i)] = {first, std::min(first + 1, from - 1),
                                           static_cast<std::uint32_t>((at - first) * 256.0)};
  }
  return places;
}

// Two channels of a pixel in one multiplication: bytes 0 and 2, then 1 and 3.
std::uint32_t blend(std::uint32_t a, std::uint32_t b, std::uint32_t share) {
  constexpr std::uint32_t even = 0x00FF00FF;
  const std::uint32_t low = ((a & even) * (256 - share) + (b & even) * share) >> 8 & even;
  const std::uint32_t high = ((a >> 8 & even) * (256 - share) + (b >> 8 & even) * share) & ~even;
  return low | high;
}

void widen(const std::uint8_t* from, const std::vector<Between>& places, std::vector<std::uint32_t>& row,
           std::vector<std::uint32_t>& source) {
  std::memcpy(source.data(), from, source.size() * 4);
  for (std::size_t x = 0; x < places.size(); ++x) {
    const Between& at = places[x];
    row[x] =
        blend(source[static_cast<std::size_t>(at.first)], source[static_cast<std::size_t>(at.second)], at.share);
  }
}

}  // namespace

void Pixels::resize(int new_width, int new_height) {
  width = new_width;
  height = new_height;
  bytes.resize(bytes_of(width, height));
}
std::uint8_t* Pixels::row(int y) { return bytes.data() + bytes_of(width, y); }
const std::uint8_t* Pixels::row(int y) const { return bytes.data() + bytes_of(width, y); }

void PixelMean::add(const Pixels& pixels) {
  const std::size_t count = pixels.bytes.size();
  if (count_ == 0) {
    width_ = pixels.width;
    height_ = pixels.height;
    sums_.assign(pixels.bytes.begin(), pixels.bytes.end());
  } else {
    const std::uint8_t* const from = pixels.bytes.data();
    std::uint16_t* const sums = sums_.data();
    for (std::size_t i = 0; i < count; ++i) sums[i] = static_cast<std::uint16_t>(sums[i] + from[i]);
  }
  ++count_;
}

// In 16 bits throughout, so that a compiler can do many at once; exact for as many pictures as may be added.
void PixelMean::write(Pixels& mean) const {
  mean.resize(width_, height_);
  const std::uint16_t* const sums = sums_.data();
  std::uint8_t* const to = mean.bytes.data();
  const std::size_t count = sums_.size();
  if (count_ == 1) {
    for (std::size_t i = 0; i < count; ++i) to[i] = static_cast<std::uint8_t>(sums[i]);
    return;
  }
  const auto half = static_cast<std::uint16_t>(count_ / 2);
  const auto share = static_cast<std::uint16_t>((65536 + count_ - 1) / count_);
  for (std::size_t i = 0; i < count; ++i) {
    const auto sum = static_cast<std::uint16_t>(sums[i] + half);
    to[i] = static_cast<std::uint8_t>(std::uint32_t{sum} * share >> 16);
  }
}

void enlarge(const Pixels& from, Pixels& to) {
  const std::vector<Between> columns = places_between(from.width, to.width);
  const std::vector<Between> rows = places_between(from.height, to.height);
  std::vector<std::uint32_t> source(static_cast<std::size_t>(from.width));
  // The two widened rows between which rows of the larger picture lie, and which of the smaller one they are.
  std::array<std::vector<std::uint32_t>, 2> wide;
  for (auto& row : wide) row.resize(static_cast<std::size_t>(to.width));
  std::array<int, 2> held{-1, -1};
  const auto hold = [&](std::size_t slot, int row) {
    if (held[slot] == row) return;
    held[slot] = row;
    widen(from.row(row), columns, wide[slot], source);
  };
  std::vector<std::uint32_t> out(static_cast<std::size_t>(to.width));
  for (int y = 0; y < to.height; ++y) {
    const Between& at = rows[static_cast<std::size_t>(y)];
    if (held[0] != at.first && held[1] == at.first) {
      std::swap(wide[0], wide[1]);
      std::swap(held[0], held[1]);
    }
    hold(0, at.first);
    hold(1, at.second);
    const std::uint32_t *const a = wide[0].data(), *const b = wide[1].data();
    for (std::size_t x = 0; x < out.size(); ++x) out[x] = blend(a[x], b[x], at.share);
    std::memcpy(to.row(y), out.data(), out.size() * 4);
  }
}

void lay_ground(Pixels& pixels, const glm::vec3& foot, const glm::vec3& top) {
  for (int y = 0; y < pixels.height; ++y) {
    const float up = (static_cast<float>(y) + 0.5F) / static_cast<float>(pixels.height);
    const glm::vec3 ground = glm::mix(foot, top, up) * 255.0F + 0.5F;
    const std::array<std::uint8_t, 4> under{static_cast<std::uint8_t>(ground.r), static_cast<std::uint8_t>(ground.g),
                                            static_cast<std::uint8_t>(ground.b), 255};
    std::uint8_t* pixel = pixels.row(y);
    for (const std::uint8_t* const end = pixel + 4 * static_cast<std::ptrdiff_t>(pixels.width); pixel < end;
         pixel += 4) {
      const std::uint32_t clear = 255U - pixel[3];
      if (clear == 0) continue;
      if (clear == 255) {
        std::memcpy(pixel, under.data(), 4);
        continue;
      }
      for (std::size_t c = 0; c < 4; ++c)
        pixel[c] = static_cast<std::uint8_t>(std::min(pixel[c] + per_255(clear * under[c]), 255U));
    }
  }
}

void lay_words(Pixels& pixels, const Canvas& canvas, const std::vector<Tile>& tiles) {
  const unsigned char* const data = canvas.data();
  for (const Tile& tile : tiles)
    for (int y = tile.y; y < tile.y + tile.height; ++y)
      for (int x = tile.x; x < tile.x + tile.width; ++x) {
        std::uint32_t ink = 0;  // opacity, red, green, blue, from high to low
        std::memcpy(&ink, data + 4 * (static_cast<std::ptrdiff_t>(y) * canvas.width() + x), 4);
        if (ink == 0) continue;
        std::uint8_t* const pixel = pixels.row(pixels.height - 1 - y) + 4 * static_cast<std::ptrdiff_t>(x);
        const std::array<std::uint32_t, 4> over{ink >> 16 & 255U, ink >> 8 & 255U, ink & 255U, ink >> 24};
        for (std::size_t c = 0; c < 4; ++c)
          pixel[c] = static_cast<std::uint8_t>(std::min(over[c] + per_255(pixel[c] * (255 - over[3])), 255U));
      }
}

}  // namespace laywright
