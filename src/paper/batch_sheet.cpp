#include "paper/batch_sheet.h"

#include <array>
#include <filesystem>

#include <fmt/format.h>

#include "answers/batch_rows.h"
#include "answers/batch_words.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "paper/drafting.h"
#include "paper/setup_parts.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr double page_width = 210.0, page_height = 297.0, foot_room = 14.0;
constexpr double width = page_width - 2.0 * sheet_margin;
constexpr double line = 3.5, row_height = 5.2;
const Type small{2.6, false, Align::start, ink};

// Where a column's words end, from the left margin; the first and the last one begin there.
struct Column {
  const char *name, *unit;
  double at_mm;
  Align align;
};
constexpr std::array<Column, 9> table{{{"Spool", "", 0.0, Align::start},
                                       {"Net", "m", 33.0, Align::end},
                                       {"Gross", "m", 55.0, Align::end},
                                       {"Splices", "", 70.0, Align::end},
                                       {"Time", "", 92.0, Align::end},
                                       {"Fiber", "kg", 109.0, Align::end},
                                       {"Diameter", "mm", 130.0, Align::end},
                                       {"Clearance", "mm", 150.0, Align::end},
                                       {"Verdict", "", 155.0, Align::start}}};
using Cells = std::array<std::string, table.size()>;

double draw_cells(Drawing& page, double top, const Cells& cells, bool bold) {
  for (std::size_t i = 0; i < table.size(); ++i) {
    put(page, {sheet_margin + table[i].at_mm, top + 3.6}, cells[i], {2.8, bold, table[i].align, ink});
  }
  return top + row_height;
}

Cells cells_of(const BatchRow& row) {
  return {row.spool, row.net, row.gross, row.splices, row.time, row.fiber, row.diameter, row.clearance, row.verdict};
}

// Pages that are begun as they are needed.
class BatchPages {
 public:
  BatchPages(const Batch& batch, const std::string& drawn_on) : batch_(batch), drawn_on_(drawn_on) {}

  std::vector<Drawing> draw() {
    begin_page();
    draw_order();
    draw_table_head();
    for (std::size_t i = 0; i < batch_.spools.size(); ++i) draw_spool(i);
    draw_total();
    for (std::size_t i = 0; i < pages_.size(); ++i) draw_page_number(i);
    return std::move(pages_);
  }

 private:
  Drawing& page() { return pages_.back(); }

  void begin_page() {
    Drawing& page = pages_.emplace_back();
    page.width_mm = page_width;
    page.height_mm = page_height;
    page.title = capitalised(order_name(batch_.order)) + ", over spools";
    draw_box(page, {sheet_margin, 10.0, width, 6.0}, ink, {});
    put(page, {sheet_margin + 2.0, 14.2}, "ORDER OVER SPOOLS", {3.0, true, Align::start, paper});
    put(page, {sheet_margin, page_height - 5.5},
        "Computed before the winds: an estimate. Cautions stand on the set-up sheet of each spool.",
        {2.5, false, Align::start, faint_ink});
    top_ = 16.0;
  }

  void draw_page_number(std::size_t index) {
    std::string words = fmt::format("page {} of {}, laywright {}", index + 1, pages_.size(), LAYWRIGHT_VERSION);
    if (!drawn_on_.empty()) words += ", " + drawn_on_;
    words += ", " + visible(std::filesystem::path(batch_.order.file).filename().string());
    put_within(pages_[index], {sheet_margin + width - 2.0, 14.2}, 120.0, words, {2.6, false, Align::end, paper});
  }

  void draw_words(const std::string& words, double indent) {
    top_ = put_lines(page(), {sheet_margin + indent, top_ + line}, lines_of(words, width - indent, small), small) -
           line;
  }

  void draw_order() {
    put_within(page(), {sheet_margin, top_ + 7.2}, width, capitalised(order_name(batch_.order)),
               {5.2, true, Align::start, ink});
    top_ += 9.5;
    if (!batch_.order.title.empty()) draw_words(visible(batch_.order.title), 0.0);
    draw_words(batch_line(batch_) + ".", 0.0);
    draw_words(besides_words(batch_.order), 0.0);
    for (const SpoolKind& kind : batch_.kinds) draw_words(room_words(kind), 0.0);
    top_ += 4.0;
  }

  void draw_table_head() {
    Cells names, units;
    for (std::size_t i = 0; i < table.size(); ++i) {
      names[i] = table[i].name;
      units[i] = table[i].unit;
    }
    top_ = draw_cells(page(), top_, names, true);
    top_ = draw_cells(page(), top_ - 1.2, units, false);
    draw_line(page(), {sheet_margin, top_}, {sheet_margin + width, top_}, {ink, 0.4, {}});
  }

  // Begins a page, with a head, where so much does not fit on this one.
  void make_room(double height) {
    if (top_ + height <= page_height - foot_room) return;
    begin_page();
    top_ += 2.0;
    draw_table_head();
  }

  void draw_spool(std::size_t index) {
    constexpr double indent = 6.0;
    const BatchRow row = spool_row(batch_, index);
    const std::vector<std::string> takes = lines_of(row.takes, width - indent, small);
    const std::vector<std::string> reason = lines_of(row.reason, width - indent, small);
    make_room(row_height + line * static_cast<double>(takes.size() + reason.size()) + 1.5);
    top_ = draw_cells(page(), top_, cells_of(row), true);
    for (const auto* lines : {&takes, &reason}) {
      // A list of pieces may be longer than a page.
      for (const std::string& words : *lines) {
        make_room(line);
        put(page(), {sheet_margin + indent, top_ + 2.6}, words, small);
        top_ += line;
      }
    }
    top_ += 0.8;
    draw_line(page(), {sheet_margin, top_}, {sheet_margin + width, top_}, {faint_ink, 0.15, {}});
  }

  void draw_total() {
    make_room(row_height + 5.0 * line);
    BatchRow row = total_row(batch_);
    row.spool = capitalised(row.spool);
    top_ = draw_cells(page(), top_ + 0.5, cells_of(row), true);
    draw_line(page(), {sheet_margin, top_}, {sheet_margin + width, top_}, {ink, 0.4, {}});
    top_ += 2.0;
    draw_words(estimate_words(batch_), 0.0);
  }

  const Batch& batch_;
  const std::string& drawn_on_;
  std::vector<Drawing> pages_;
  double top_ = 0.0;
};

}  // namespace

std::vector<Drawing> draw_batch_sheet(const Batch& batch, const std::string& drawn_on) {
  return BatchPages(batch, drawn_on).draw();
}

}  // namespace laywright
