#include "render/face_levels.h"

#include <algorithm>
#include <cmath>

namespace laywright {
namespace {

constexpr double group_px = 4.0;
constexpr double nested_rise_d = 0.87;  // of a nested layer: sin 60 degrees
constexpr double lighter = 1.22, darker = 0.70;

FaceLevel halved(const FaceLevel& fine) {
  FaceLevel level{std::max(1, fine.width / 2), std::max(1, fine.height / 2), {}};
  level.colour.reserve(static_cast<std::size_t>(level.width) * static_cast<std::size_t>(level.height));
  const auto at = [&fine](int x, int y) -> const Rgba& {
    x = std::min(x, fine.width - 1);
    y = std::min(y, fine.height - 1);
    return fine
        .colour[static_cast<std::size_t>(y) * static_cast<std::size_t>(fine.width) + static_cast<std::size_t>(x)];
  };
  for (int y = 0; y < level.height; ++y) {
    for (int x = 0; x < level.width; ++x) {
      const Rgba &a = at(2 * x, 2 * y), &b = at(2 * x + 1, 2 * y), &c = at(2 * x, 2 * y + 1),
                 &d = at(2 * x + 1, 2 * y + 1);
      const auto mean = [](int p, int q, int r, int s) {
        return static_cast<std::uint8_t>((p + q + r + s + 2) / 4);
      };
      level.colour.push_back(
          {mean(a.r, b.r, c.r, d.r), mean(a.g, b.g, c.g, d.g), mean(a.b, b.b, c.b, d.b), mean(a.a, b.a, c.a, d.a)});
    }
  }
  return level;
}

// 0 where a fiber is two pixels thick or more, 1 where it is one or less.
double banded_share(double fiber_px) {
  const double t = std::clamp(2.0 - fiber_px, 0.0, 1.0);
  return t * t * (3.0 - 2.0 * t);
}

// Share of light groups among the fiber of a block of the image's pixels, -1 (all dark) to 1; 0 where there is none.
double tone_of(const FaceImage& image, std::size_t x, std::size_t y, std::size_t block, int group) {
  int light = 0, fiber = 0;
  for (std::size_t j = y * block; j < std::min((y + 1) * block, image.height); ++j) {
    for (std::size_t i = x * block; i < std::min((x + 1) * block, image.width); ++i) {
      const int layer = image.layer[j * image.width + i];
      if (layer == 0) continue;
      ++fiber;
      light += (layer - 1) / group % 2 == 0 ? 1 : -1;
    }
  }
  return fiber > 0 ? static_cast<double>(light) / fiber : 0.0;
}

std::uint8_t toned(std::uint8_t channel, double factor, std::uint8_t most) {
  return static_cast<std::uint8_t>(std::clamp(channel * factor, 0.0, static_cast<double>(most)));
}

void band(FaceLevel& level, const FaceImage& image, std::size_t block, double fiber_px) {
  const double share = banded_share(fiber_px);
  if (share <= 0.0) return;
  const int group = layers_in_group(fiber_px);
  for (int y = 0; y < level.height; ++y) {
    for (int x = 0; x < level.width; ++x) {
      Rgba& colour = level.colour[static_cast<std::size_t>(y) * static_cast<std::size_t>(level.width) +
                                  static_cast<std::size_t>(x)];
      if (colour.a == 0) continue;
      const double tone = tone_of(image, static_cast<std::size_t>(x), static_cast<std::size_t>(y), block, group);
      const double full = tone >= 0.0 ? 1.0 + tone * (lighter - 1.0) : 1.0 + tone * (1.0 - darker);
      const double factor = 1.0 + share * (full - 1.0);
      colour = {toned(colour.r, factor, colour.a), toned(colour.g, factor, colour.a),
                toned(colour.b, factor, colour.a), colour.a};
    }
  }
}

}  // namespace

int layers_in_group(double fiber_px) {
  constexpr int most = 100'000;
  for (int power = 1; power < most; power *= 10) {
    for (const int count : {5 * power, 10 * power, 20 * power}) {
      if (count * nested_rise_d * fiber_px >= group_px) return count;
    }
  }
  return most;
}

std::vector<FaceLevel> face_levels(const std::vector<Rgba>& filled, const FaceImage& image) {
  std::vector<FaceLevel> levels;
  levels.push_back({static_cast<int>(image.width), static_cast<int>(image.height), filled});
  while (levels.back().width > 1 || levels.back().height > 1) levels.push_back(halved(levels.back()));
  if (image.layer.empty()) return levels;
  double fiber_px = image.fiber_diameter_mm / image.px_mm;
  std::size_t block = 1;
  for (FaceLevel& level : levels) {
    band(level, image, block, fiber_px);
    fiber_px *= 0.5;
    block *= 2;
  }
  return levels;
}

}  // namespace laywright
