// Lines, shapes and words drawn over a picture, in its pixels, y downward. Letters are crisp at any size.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include <glm/glm.hpp>

namespace laywright {

struct Ink {
  glm::vec3 color{0.0F};  // sRGB, 0 to 1
  double opacity = 1.0;
};

enum class TextAlign { start, middle, end };

class Canvas {
 public:
  // Wholly transparent. Throws std::bad_alloc.
  Canvas(int width, int height);
  Canvas(Canvas&&) noexcept;
  Canvas& operator=(Canvas&&) noexcept;
  ~Canvas();

  // Wholly transparent again.
  void clear();

  [[nodiscard]] int width() const;
  [[nodiscard]] int height() const;

  void line(const std::vector<glm::dvec2>& points, const Ink& ink, double width, bool dashed = false);
  void fill(const std::vector<glm::dvec2>& points, const Ink& ink);
  void ring(glm::dvec2 centre, double radius, const Ink& ink, double width);
  void box(glm::dvec2 corner, glm::dvec2 size, double rounding, const Ink& ink);
  void frame(glm::dvec2 corner, glm::dvec2 size, double rounding, const Ink& ink, double width);

  // Words on a base line. `size` is the height of the em square.
  void text(glm::dvec2 at, const std::string& words, double size, const Ink& ink, TextAlign align = TextAlign::start,
            bool bold = false);
  // Read from below to above, centred along a base line that runs upward through a place.
  void text_upward(glm::dvec2 at, const std::string& words, double size, const Ink& ink);
  [[nodiscard]] double text_width(const std::string& words, double size, bool bold = false) const;

  // The bytes as cairo keeps them (blue, green, red, opacity on little-endian machines), rows from above to below.
  [[nodiscard]] const unsigned char* data() const;

 private:
  struct Surface;
  std::unique_ptr<Surface> surface_;
};

}  // namespace laywright
