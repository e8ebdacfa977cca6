#include "paper/customer_sheet.h"

#include <algorithm>
#include <utility>

#include "paper/drafting.h"
#include "paper/section_cut.h"
#include "paper/spool_view.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr double letter_margin = 18.0, between = 5.0;
constexpr double row_mm = 5.4;

const Type told_type{5.2, true, Align::start, ink};
const Type body_type{3.6, false, Align::start, ink};
const Type row_type{3.3, false, Align::start, ink};
const Type name_type{3.3, false, Align::start, faint_ink};
const Type sure_type{2.8, false, Align::start, faint_ink};
const Type verdict_type{3.6, true, Align::start, ink};

// Base line of the first of some lines whose top is there.
double base_of(double top, const Type& type) { return top + type.height_mm; }

// As large as fits into so much, its upper right corner there; returns its width.
double draw_logo(Drawing& page, Point corner, Bitmap logo) {
  constexpr double most_wide = 48.0, most_high = 20.0;
  if (logo.pixels.empty()) return 0.0;
  const double scale = std::min(most_wide / logo.width, most_high / logo.height);
  logo.box = {corner.x - logo.width * scale, corner.y, logo.width * scale, logo.height * scale};
  const double width = logo.box.width;
  page.add(std::move(logo));
  return width;
}

// In at most two lines, smaller where it is longer.
double draw_title(Drawing& page, Point at, double width, const std::string& title) {
  Type type{7.0, true, Align::start, ink};
  std::vector<std::string> lines = lines_of(title, width, type);
  const auto too_wide = [&] {
    return std::any_of(lines.begin(), lines.end(),
                       [&](const std::string& line) { return width_of(line, type) > width; });
  };
  while ((lines.size() > 2 || too_wide()) && type.height_mm > 2.0 * smallest_print_mm) {
    type.height_mm -= 0.25;
    lines = lines_of(title, width, type);
  }
  // One word as wide as the page.
  if (too_wide()) {
    for (const std::string& line : lines) {
      at.y += 1.3 * type.height_mm;
      put_within(page, at, width, line, type);
    }
    return at.y + 0.3 * type.height_mm;
  }
  return put_lines(page, {at.x, base_of(at.y, type)}, lines, type) - type.height_mm;
}

double draw_head(Drawing& page, const CustomerSheet& sheet) {
  const double right = page.width_mm - letter_margin;
  const double logo = draw_logo(page, {right, letter_margin}, sheet.logo);
  const double width = right - letter_margin - (logo > 0.0 ? logo + between : 0.0);
  double top = draw_title(page, {letter_margin, letter_margin}, width, sheet.letter.title) + 1.0;
  const std::string address = address_line(sheet.letter);
  if (!address.empty())
    top = put_lines(page, {letter_margin, base_of(top, body_type)}, lines_of(address, width, body_type), body_type) -
          body_type.height_mm;
  constexpr double logo_foot = letter_margin + 21.0;
  top = std::max(top, logo > 0.0 ? logo_foot : 0.0) + 2.0;
  draw_line(page, {letter_margin, top}, {right, top}, {faint_ink, 0.2, {}});
  return top + between;
}

// A part of the page that is as high as its words.
struct Block {
  std::vector<std::string> lines;
  Type type;

  [[nodiscard]] double height() const {
    return lines.empty() ? 0.0 : 1.3 * type.height_mm * static_cast<double>(lines.size()) + 2.5;
  }
  void draw(Drawing& page, double& top) const {
    if (lines.empty()) return;
    put_lines(page, {letter_margin, base_of(top, type)}, lines, type);
    top += height();
  }
};

Block block_of(const Drawing& page, const std::string& words, const Type& type) {
  return {lines_of(words, page.width_mm - 2.0 * letter_margin, type), type};
}

double rows_height(const CustomerSheet& sheet) {
  return row_mm * static_cast<double>(sheet.summary.rows.size()) + 3.0;
}

void draw_rows(Drawing& page, double& top, const CustomerSheet& sheet) {
  const double right = page.width_mm - letter_margin;
  constexpr double value_at = letter_margin + 62.0;
  for (const auto& [name, value] : sheet.summary.rows) {
    draw_line(page, {letter_margin, top}, {right, top}, {faint_ink, 0.08, {}});
    const double base = top + 0.7 * row_mm;
    put_within(page, {letter_margin, base}, value_at - letter_margin - 2.0, name, name_type);
    put_within(page, {value_at, base}, right - value_at, value, row_type);
    top += row_mm;
  }
  draw_line(page, {letter_margin, top}, {right, top}, {faint_ink, 0.08, {}});
  top += 3.0;
}

void draw_spool(Drawing& page, const Box& box, const CustomerSheet& sheet) {
  if (sheet.picture.pixels.empty()) {
    draw_spool_view(page, box, cut_section(sheet.plan, sheet.build, 0.0), sheet.measurements);
    return;
  }
  Bitmap picture = sheet.picture;
  const double scale = std::min(box.width / picture.width, box.height / picture.height);
  const double width = picture.width * scale, height = picture.height * scale;
  picture.box = {box.left + 0.5 * (box.width - width), box.top + 0.5 * (box.height - height), width, height};
  page.add(std::move(picture));
}

}  // namespace

Drawing draw_customer_sheet(const CustomerSheet& sheet) {
  Drawing page;
  const bool letter = sheet.paper == Paper::letter;
  page.width_mm = letter ? 215.9 : 210.0;
  page.height_mm = letter ? 279.4 : 297.0;
  page.title = sheet.letter.title;
  double top = draw_head(page, sheet);
  const Block greeting = block_of(page, sheet.letter.greeting, body_type);
  const Block told = block_of(page, sheet.summary.holds + ' ' + sheet.summary.wound, told_type);
  const Block verdict = block_of(page, sheet.verdict, verdict_type);
  const Block sure = block_of(page, sheet.summary.sure + ' ' + sheet.summary.care, sure_type);
  const double below = told.height() + rows_height(sheet) + verdict.height() + sure.height();

  greeting.draw(page, top);
  // The picture has what is left, but not more than it is good for.
  const double foot = page.height_mm - letter_margin, most_high = 0.75 * (page.width_mm - 2.0 * letter_margin);
  const double high = std::min(foot - below - top - between, most_high);
  draw_spool(page, {letter_margin, top, page.width_mm - 2.0 * letter_margin, high}, sheet);
  top += high + between;
  told.draw(page, top);
  draw_rows(page, top, sheet);
  verdict.draw(page, top);
  sure.draw(page, top);
  return page;
}

}  // namespace laywright
