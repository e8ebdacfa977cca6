// Lines and paragraphs of text, set by the widths of the letters that the sinks will use.
#pragma once

#include <string>
#include <vector>

#include "paper/drawing.h"

namespace laywright {

struct Type {
  double height_mm = 2.8;
  bool bold = false;
  Align align = Align::start;
  Color color;
};

// Width of one line on the page, mm.
[[nodiscard]] double width_of(const std::string& words, const Type& type);

void put(Drawing& drawing, Point at, const std::string& words, const Type& type);

// The least that is read on a shop floor: a little more than 7 points (practice, no source).
inline constexpr double smallest_print_mm = 2.5;

// The same, made smaller where it is wider than `most_mm`, down to the smallest print; what is wider still ends in an ellipsis.
void put_within(Drawing& drawing, Point at, double most_mm, const std::string& words, Type type);

// The drawing's title as a headline from `at` on, within the page.
void put_title(Drawing& drawing, Point at);

// Broken between words; a word wider than the line stands alone.
[[nodiscard]] std::vector<std::string> lines_of(const std::string& words, double width_mm, const Type& type);

// Lines from the base line of the first on, `leading` letter heights apart. Returns the base line that would follow.
double put_lines(Drawing& drawing, Point at, const std::vector<std::string>& lines, const Type& type,
                 double leading = 1.3);

// A paragraph that begins with a head in bold: its first line goes on behind the head.
struct Paragraph {
  std::string head;
  double head_width = 0.0;
  std::vector<std::string> lines;
};
[[nodiscard]] Paragraph paragraph_of(const std::string& head, const std::string& text, double width_mm, Type type);
double put_paragraph(Drawing& drawing, Point at, const Paragraph& paragraph, Type type, double leading = 1.3);

}  // namespace laywright
