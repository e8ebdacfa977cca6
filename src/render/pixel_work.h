// What a software painter does to pixels itself, since through OpenGL it would take it many times as long. All
// pictures: four bytes a pixel (red, green, blue, each times the opacity; opacity), rows from below to above.
#pragma once

#include <cstdint>
#include <vector>

#include "render/canvas.h"
#include "render/inked_tiles.h"

namespace laywright {

struct Pixels {
  int width = 0, height = 0;
  std::vector<std::uint8_t> bytes;

  void resize(int new_width, int new_height);
  [[nodiscard]] std::uint8_t* row(int y);
  [[nodiscard]] const std::uint8_t* row(int y) const;
};

// The mean of several pictures of one size.
class PixelMean {
 public:
  void clear() { count_ = 0; }
  void add(const Pixels& pixels);  // 16 pictures at most
  // Rounded to the nearest. Precondition: at least one was added.
  void write(Pixels& mean) const;

 private:
  int width_ = 0, height_ = 0;
  std::uint32_t count_ = 0;
  std::vector<std::uint16_t> sums_;
};

// `from` brought to the size of `to`, each pixel between the four that lie about it. Neither may be of no size.
void enlarge(const Pixels& from, Pixels& to);

// Under what is clear in the picture: a ground from one colour at the foot to another at the top, sRGB 0 to 1.
void lay_ground(Pixels& pixels, const glm::vec3& foot, const glm::vec3& top);

// A canvas of the same size over it.
void lay_words(Pixels& pixels, const Canvas& canvas, const std::vector<Tile>& tiles);

}  // namespace laywright
