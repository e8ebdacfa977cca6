#include "paper/typeset.h"

#include <algorithm>
#include <cctype>
#include <memory>
#include <sstream>
#include <utility>

#include <cairo.h>

#include "base/readable.h"
#include "paper/drafting.h"

namespace laywright {
namespace {

// Measured large, so that no rounding to pixels counts.
constexpr double measured_height = 200.0;

// A number and its unit are not parted.
bool stays_with(const std::string& word, const std::string& next) {
  constexpr std::size_t longest_unit = 5;
  return std::isdigit(static_cast<unsigned char>(word.back())) != 0 && !next.empty() && next.size() <= longest_unit;
}

// Lines, of which the first may be shorter than the others.
std::vector<std::string> broken(const std::string& words, double first_mm, double width_mm, const Type& type) {
  std::vector<std::string> lines;
  std::istringstream stream(words);
  std::string line;
  std::string next;
  stream >> next;
  while (!next.empty()) {
    std::string word = std::move(next);
    next.clear();
    stream >> next;
    if (stays_with(word, next)) {
      word += ' ' + next;
      next.clear();
      stream >> next;
    }
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (!line.empty() && width_of(longer, type) > (lines.empty() ? first_mm : width_mm)) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

}  // namespace

double width_of(const std::string& words, const Type& type) {
  const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
      cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1), &cairo_surface_destroy);
  const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> context(cairo_create(surface.get()), &cairo_destroy);
  cairo_select_font_face(context.get(), "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                         type.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(context.get(), measured_height);
  cairo_text_extents_t extents;
  cairo_text_extents(context.get(), words.c_str(), &extents);
  return extents.x_advance * type.height_mm / measured_height;
}

void put(Drawing& drawing, Point at, const std::string& words, const Type& type) {
  drawing.add(Text{at, words, type.height_mm, type.align, type.bold, false, type.color});
}

void put_within(Drawing& drawing, Point at, double most_mm, const std::string& words, Type type) {
  const double width = width_of(words, type);
  if (width > most_mm)
    type.height_mm = std::max(std::min(smallest_print_mm, type.height_mm), type.height_mm * most_mm / width);
  // What has just been made to fit may be wider by a rounding.
  const double room = most_mm * (1.0 + 1e-9);
  put(drawing, at, shortened(words, [&](const std::string& line) { return width_of(line, type) <= room; }), type);
}

void put_title(Drawing& drawing, Point at) {
  put_within(drawing, at, drawing.width_mm - 2.0 * at.x, drawing.title, {5.0, true, Align::start, ink});
}

std::vector<std::string> lines_of(const std::string& words, double width_mm, const Type& type) {
  return broken(words, width_mm, width_mm, type);
}

Paragraph paragraph_of(const std::string& head, const std::string& text, double width_mm, Type type) {
  Paragraph paragraph{head, 0.0, {}};
  const Type bold{type.height_mm, true, type.align, type.color};
  if (!head.empty()) paragraph.head_width = width_of(head, bold) + 0.4 * type.height_mm;
  paragraph.lines = broken(text, width_mm - paragraph.head_width, width_mm, type);
  return paragraph;
}

double put_paragraph(Drawing& drawing, Point at, const Paragraph& paragraph, Type type, double leading) {
  put(drawing, at, paragraph.head, {type.height_mm, true, type.align, type.color});
  double indent = paragraph.head_width;
  for (const std::string& line : paragraph.lines) {
    put(drawing, {at.x + indent, at.y}, line, type);
    at.y += leading * type.height_mm;
    indent = 0.0;
  }
  return at.y;
}

double put_lines(Drawing& drawing, Point at, const std::vector<std::string>& lines, const Type& type,
                 double leading) {
  for (const std::string& line : lines) {
    put(drawing, at, line, type);
    at.y += leading * type.height_mm;
  }
  return at.y;
}

}  // namespace laywright
