#include <algorithm>

#include "paper/drafting.h"
#include "paper/setup_parts.h"

namespace laywright {
namespace {

constexpr double setup_row_height = 4.45;
const Pen hair{{0.72, 0.72, 0.75}, 0.1, {}};

double draw_row(Drawing& page, const Box& column, double top, const Row& row) {
  constexpr double box = 2.7, between = 2.0;
  const double base = top + 3.1, own = column.left + 0.38 * column.width;
  const double right = column.right() - box - 1.5;
  const Type own_type{2.8, true, Align::start, ink}, other_type{smallest_print_mm, false, Align::end, faint_ink};
  // Where both do not fit, the other system gives way; what is still too wide becomes smaller.
  const auto fits = [&](const std::string& other) {
    return width_of(row.own, own_type) + between + width_of(other, other_type) <= right - own;
  };
  const std::string& other = fits(row.other) ? row.other : row.brief;
  put_within(page, {column.left, base}, 0.37 * column.width, row.label, {2.6, false, Align::start, ink});
  put_within(page, {own, base}, right - own, row.own, own_type);
  if (fits(other)) put(page, {right, base}, other, other_type);
  if (row.tick) draw_box(page, {column.right() - box, top + 0.75, box, box}, {}, Pen{ink, 0.2, {}});
  draw_line(page, {column.left, top + setup_row_height}, {column.right(), top + setup_row_height}, hair);
  return top + setup_row_height;
}

}  // namespace

double draw_heading(Drawing& page, double left, double width, double top, const std::string& words) {
  put(page, {left, top + 3.0}, words, {3.0, true, Align::start, ink});
  draw_line(page, {left, top + 4.2}, {left + width, top + 4.2}, {ink, 0.3, {}});
  return top + 4.4;
}

double draw_row_groups(Drawing& page, const Box& column, const std::vector<RowGroup>& groups) {
  double top = column.top;
  for (const RowGroup& group : groups) {
    if (group.rows.empty()) continue;
    if (top > column.top) top += 1.4;
    top = draw_heading(page, column.left, column.width, top, group.title);
    for (const Row& row : group.rows) top = draw_row(page, column, top, row);
  }
  return top;
}

double draw_blanks(Drawing& page, const Box& row, const std::vector<Blank>& blanks) {
  const double width = row.width / static_cast<double>(blanks.size());
  double left = row.left;
  for (const auto& [name, filled_in] : blanks) {
    const Type type{2.5, false, Align::start, ink};
    put(page, {left, row.bottom() - 1.0}, name, type);
    const double from = left + width_of(name, type) + 1.0, to = left + width - 3.0;
    draw_line(page, {from, row.bottom()}, {to, row.bottom()}, {ink, 0.2, {}});
    if (!filled_in.empty())
      put_within(page, {from + 1.0, row.bottom() - 1.0}, to - from - 1.0, filled_in, {2.8, true, Align::start, ink});
    left += width;
  }
  return row.bottom();
}

}  // namespace laywright
