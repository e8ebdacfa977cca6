// A drawing on paper as plain data: what stands where, in millimetres of the page, y downward. Sheets and pictures
// are made as drawings; the sinks (cairo_sink.h) put them on paper, screen or disk.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace laywright {

struct Color {
  double red = 0.0, green = 0.0, blue = 0.0;  // 0 to 1, sRGB
};

struct Point {
  double x = 0.0, y = 0.0;
};

struct Box {
  double left = 0.0, top = 0.0, width = 0.0, height = 0.0;

  [[nodiscard]] double right() const { return left + width; }
  [[nodiscard]] double bottom() const { return top + height; }
};

struct Pen {
  Color color;
  double width_mm = 0.2;
  std::vector<double> dashes_mm;  // ink, gap, ink, ...; empty: a full line
};

struct Shape {
  std::vector<Point> points;
  bool closed = false;
  std::optional<Color> fill;
  std::optional<Pen> pen;
};

// Filled circles of one size and colour. They may be very many.
struct Dots {
  std::vector<Point> centres;
  double diameter_mm = 1.0;
  Color color;
};

enum class Align { start, middle, end };

struct Text {
  Point at;                // on the base line
  std::string words;       // UTF-8, one line
  double height_mm = 3.0;  // of the letters' em square
  Align align = Align::start;
  bool bold = false;
  bool upward = false;  // read from below to above
  Color color;
};

// Pixels that fill a box: rows from above to below, each pixel red, green, blue and a byte of nothing.
struct Bitmap {
  Box box;
  int width = 0, height = 0;
  std::vector<std::uint8_t> pixels;  // 4 * width * height
};

// Until the next ClipEnd, only what lies inside the box is seen. Clips do not nest.
struct ClipBegin {
  Box box;
};
struct ClipEnd {};

struct Drawing {
  using Item = std::variant<Shape, Dots, Text, Bitmap, ClipBegin, ClipEnd>;

  double width_mm = 297.0, height_mm = 210.0;  // A4, landscape
  std::string title;                           // for the file's own properties
  std::vector<Item> items;                     // later ones cover earlier ones

  template <class Part>
  void add(Part part) {
    items.emplace_back(std::move(part));
  }
};

}  // namespace laywright
