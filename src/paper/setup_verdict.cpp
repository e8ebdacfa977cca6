// Whether to wind at all, before anything that is to be set for it.
#include "base/spelling.h"
#include "paper/drafting.h"
#include "paper/setup_parts.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

const char* word_of(Grade grade) {
  switch (grade) {
    case Grade::good: return "GO";
    case Grade::marginal: return "ASK FIRST";
    case Grade::do_not_wind: return "NO GO";
  }
  return "";
}

}  // namespace

double draw_verdict(Drawing& page, const Box& band, const SetupSheet& sheet) {
  const WindVerdict verdict =
      sheet.verdict.value_or(verdict_of(sheet.plan, sheet.build, sheet.measurements, &sheet.run));
  constexpr double padding = 1.2, block_width = 22.0;
  const Type type{2.7, verdict.grade != Grade::good, Align::start, ink};
  const double left = band.left + block_width + padding;
  const auto lines = lines_of(verdict_line(verdict), band.width - block_width - 2.0 * padding, type);
  const double bottom =
      put_lines(page, {left, band.top + padding + type.height_mm}, lines, type) - type.height_mm + padding;
  const bool no = verdict.grade == Grade::do_not_wind;
  draw_box(page, {band.left, band.top, block_width, bottom - band.top}, no ? std::optional(ink) : std::nullopt,
           Pen{ink, 0.2, {}});
  // On the first line, so that who is read to hears it first.
  constexpr double letters = 3.6;
  put(page, {band.left + 0.5 * block_width, band.top + padding + type.height_mm}, word_of(verdict.grade),
      {letters, true, Align::middle, no ? paper : ink});
  return bottom;
}

}  // namespace laywright
