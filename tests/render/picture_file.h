// Pictures made by the program, and what is seen in them.
#pragma once

#include <png.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <vector>

#include "app/program.h"
#include "scene/palette.h"

namespace laywright {

struct Pixel {
  std::uint8_t r = 0, g = 0, b = 0, a = 0;
};

struct PictureFile {
  int width = 0, height = 0;
  std::vector<Pixel> pixels;

  [[nodiscard]] const Pixel& at(int x, int y) const {
    return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
  }
};

inline PictureFile read_png(const std::filesystem::path& file) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  if (png_image_begin_read_from_file(&image, file.c_str()) == 0) throw std::runtime_error(image.message);
  image.format = PNG_FORMAT_RGBA;
  PictureFile picture{static_cast<int>(image.width), static_cast<int>(image.height), {}};
  picture.pixels.resize(std::size_t{image.width} * image.height);
  if (png_image_finish_read(&image, nullptr, picture.pixels.data(), 0, nullptr) == 0)
    throw std::runtime_error(image.message);
  return picture;
}

// Which layer of so many a pixel shows, from 0, whatever light falls on it: that whose colour has the nearest direction in
// linear light. -1 where it is grey or clear.
inline int layer_colour_at(const Pixel& pixel, std::size_t layers) {
  const auto linear = [](std::uint8_t channel) { return std::pow(channel / 255.0, 2.0); };
  const std::array<double, 3> seen{linear(pixel.r), linear(pixel.g), linear(pixel.b)};
  const double length = std::hypot(seen[0], seen[1], seen[2]);
  const double least = std::min({seen[0], seen[1], seen[2]}), most = std::max({seen[0], seen[1], seen[2]});
  if (pixel.a < 250 || most < 0.004 || least > 0.55 * most) return -1;
  int best = -1;
  double best_cosine = 0.97;
  for (std::size_t i = 0; i < layers; ++i) {
    const Rgba colour = layer_rgba(i + 1, layers);
    const std::array<double, 3> pure{linear(colour.r), linear(colour.g), linear(colour.b)};
    const double cosine = (seen[0] * pure[0] + seen[1] * pure[1] + seen[2] * pure[2]) /
                          (length * std::hypot(pure[0], pure[1], pure[2]));
    if (cosine <= best_cosine) continue;
    best_cosine = cosine;
    best = static_cast<int>(i);
  }
  return best;
}

// Pixels of each layer's colour.
inline std::vector<int> layer_colours_in(const PictureFile& picture, std::size_t layers) {
  std::vector<int> counts(layers, 0);
  for (const Pixel& pixel : picture.pixels)
    if (const int colour = layer_colour_at(pixel, layers); colour >= 0) ++counts[static_cast<std::size_t>(colour)];
  return counts;
}

// A wind of 0.5 mm fiber, 18 turns to a layer; it does not roll, so that a mirrored one is the mirror image.
inline std::string spool_plan(double turns, const std::string& start = "left", double barrel_mm = 50.0) {
  return "format = \"lay-plan 1\"\ntitle = \"Small\"\n[spool]\nbarrel_diameter = \"" + std::to_string(barrel_mm) +
         R"( mm"
flange_diameter = "70 mm"
inside_width = "10 mm"
[fiber]
diameter = "0.5 mm"
friction = 0.5
section = "flat"
[traverse]
motion = "continuous"
pitch = "0.53 mm"
left_stop = "0.26 mm"
right_stop = "0.26 mm"
start = ")" +
         start +
         R"("
free_length = "50 mm"
[traverse.reversal]
kind = "instant"
[wind]
turns = )" +
         std::to_string(turns) + "\n";
}

// The picture of a plan, made by the shipped command.
// Coloured by layer unless the options say otherwise: fiber then differs from the spool.
inline PictureFile picture_of(const Workshop& shop, const std::string& plan, const std::string& options) {
  shop.write("plan.lay.toml", plan);
  const Ran ran = shop.run("$LW picture plan.lay.toml -o picture.png " + options +
                           (options.find("--colour") == std::string::npos ? " --colour layer" : ""));
  if (ran.code != 0) throw std::runtime_error(ran.err);
  return read_png(shop.at("picture.png"));
}

}  // namespace laywright
