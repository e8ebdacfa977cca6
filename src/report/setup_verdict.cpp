// Whether to wind at all, before anything that is to be set for it.
#include "base/spelling.h"
#include "report/drafting.h"
#include "report/setup_parts.h"
#include "verdict/verdict_words.h"

namespace laywright {

double draw_verdict(Drawing& page, const Box& band, const SetupSheet& sheet) {
  const WindVerdict verdict =
      sheet.verdict.value_or(verdict_of(sheet.plan, sheet.build, sheet.measurements, &sheet.run));
  constexpr double padding = 1.2, bar_width = 1.4;
  const Type type{2.7, verdict.grade != Grade::good, Align::start, ink};
  const double left = band.left + bar_width + padding;
  const auto lines = lines_of(verdict_line(verdict), band.width - bar_width - 2.0 * padding, type);
  const double bottom =
      put_lines(page, {left, band.top + padding + type.height_mm}, lines, type) - type.height_mm + padding;
  draw_box(page, {band.left, band.top, bar_width, bottom - band.top}, ink, {});
  draw_box(page, {band.left, band.top, band.width, bottom - band.top}, {}, Pen{ink, 0.2, {}});
  return bottom;
}

}  // namespace laywright
