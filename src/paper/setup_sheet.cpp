#include "paper/setup_sheet.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include "base/readable.h"
#include "figures/figures.h"
#include "paper/drafting.h"
#include "paper/setup_parts.h"
#include "paper/square_code.h"
#include "plan/revision.h"

namespace laywright {
namespace {

constexpr double gap = 3.5;

Drawing blank_page(const SetupSheet& sheet) {
  Drawing page;
  page.width_mm = sheet.paper == Paper::a4 ? 210.0 : 215.9;
  page.height_mm = sheet.paper == Paper::a4 ? 297.0 : 279.4;
  page.title = title_of(sheet.plan) + ", set-up sheet";
  return page;
}

Box inside(const Drawing& page) {
  return {sheet_margin, 10.0, page.width_mm - 2.0 * sheet_margin, page.height_mm - 19.5};
}

Box below(const Box& band, double top) { return {band.left, top, band.width, band.bottom() - top}; }

// Beside what follows the bar, on page one.
constexpr double code_side = 19.0, code_room = code_side + 2.0;

// "plan 3F9A-0C12, laywright 0.1.0, 2026-11-29, turns-back-late.lay.toml": enough to find the plan again, and no more of a path than
// its name, which may be cut short and is all that a shop floor needs.
std::string origin_of(const SetupSheet& sheet) {
  std::string words;
  const auto add = [&](const std::string& part) {
    if (!part.empty()) words += (words.empty() ? "" : ", ") + part;
  };
  add("plan " + revision_of(sheet.plan.draft()));
  add("laywright " LAYWRIGHT_VERSION);
  add(sheet.drawn_on);
  add(std::filesystem::path(sheet.plan.file()).filename().string());
  return words;
}

double draw_header(Drawing& page, const SetupSheet& sheet, int number) {
  const Box band = inside(page);
  draw_box(page, {band.left, band.top, band.width, 6.0}, ink, {});
  const Type name{3.0, true, Align::start, paper};
  const std::string words = "SET-UP SHEET FOR THE WINDER";
  put(page, {band.left + 2.0, band.top + 4.2}, words, name);
  put_within(page, {band.right() - 2.0, band.top + 4.2}, band.width - width_of(words, name) - 8.0,
             fmt::format("page {} of {}, {}", number, setup_pages, origin_of(sheet)),
             {2.6, false, Align::end, paper});
  const double room = number == 1 ? band.width - code_room : band.width;
  put_within(page, {band.left, band.top + 12.2}, room, title_of(sheet.plan), {5.2, true, Align::start, ink});
  return band.top + 14.5;
}

double draw_notes(Drawing& page, const Box& band, const std::string& notes) {
  if (notes.empty()) return band.top;
  const Type type{2.6, false, Align::start, ink};
  std::vector<std::string> lines = lines_of(notes, band.width, type);
  constexpr std::size_t most = 2;
  if (lines.size() > most) {
    lines.resize(most);
    lines.back() += " \u2026";
  }
  return put_lines(page, {band.left, band.top + 2.6}, lines, type);
}

// Who tells what the wind is made for needs room for it; who fills it in by hand gets one row.
double draw_title_bar(Drawing& page, const Box& all, double top, const PlanOrder& order) {
  constexpr double row = 7.0;
  const Blank number{"Order no.", visible(order.number)}, spool{"Spool no.", visible(order.spool)};
  const Blank lot{"Fiber lot", visible(order.lot)}, machine{"Machine"}, date{"Date"};
  if (order == PlanOrder{})
    return draw_blanks(page, {all.left, top, all.width, row}, {number, machine, spool, lot, date});
  top = draw_blanks(page, {all.left, top, all.width, row}, {number, {"Customer", visible(order.customer)}, spool});
  return draw_blanks(page, {all.left, top, all.width, row}, {lot, machine, date});
}

void draw_foot(Drawing& page) {
  put(page, {sheet_margin, page.height_mm - 5.5},
      "Computed before the wind: an estimate. The machine's manual, local codes and the makers' limits come first.",
      {2.5, false, Align::start, faint_ink});
}

Drawing page_one(const SetupSheet& sheet) {
  Drawing page = blank_page(sheet);
  const Box all = inside(page);
  double top = draw_header(page, sheet, 1);
  draw_square_code(page, {all.right() - code_side, all.top + 7.0}, code_side,
                   "laywright plan " + revision_of(sheet.plan.draft()));
  const double below_code = all.top + 7.0 + code_side;
  const Box beside = {all.left, all.top, all.width - code_room, all.height};
  top = draw_notes(page, below(beside, top), sheet.plan.notes());
  top = draw_verdict(page, below(beside, top + 0.6), sheet);
  top = std::max(top, below_code);
  top = draw_title_bar(page, all, top + 1.0, sheet.plan.order());
  top = draw_pictures(page, below(all, top + 2.0), sheet);
  top = draw_settings(page, below(all, top + gap), sheet);
  const double cautions = draw_cautions(page, all);
  const auto rest = [&] { return Box{all.left, top + gap, all.width, cautions - top - 2.0 * gap}; };
  // Steps leave room for what is to be minded.
  constexpr double for_warnings = 22.0;
  const auto& warnings = sheet.run.warnings;
  const bool warned = !warnings.empty() && !warnings.front().note;
  Box for_steps = rest();
  if (warned) for_steps.height -= for_warnings;
  top = draw_steps(page, for_steps, sheet);
  top = draw_machine_warnings(page, rest(), sheet);
  (void)draw_checklist(page, rest());
  draw_foot(page);
  return page;
}

Drawing page_two(const SetupSheet& sheet) {
  Drawing page = blank_page(sheet);
  const Box all = inside(page);
  double top = draw_header(page, sheet, 2);
  top = draw_checkpoints(page, below(all, top + 1.0), sheet);
  top = draw_charts(page, below(all, top + gap), sheet);
  top = draw_expected(page, below(all, top + gap), sheet);
  const double as_wound = draw_as_wound(page, all);
  (void)draw_findings(page, {all.left, top + gap, all.width, as_wound - top - 2.0 * gap}, sheet);
  draw_foot(page);
  return page;
}

}  // namespace

std::vector<Drawing> draw_setup_sheet(const SetupSheet& sheet) { return {page_one(sheet), page_two(sheet)}; }

}  // namespace laywright
