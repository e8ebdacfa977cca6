#include "measure/phrases.h"

#include <fmt/format.h>

#include "base/quantity_text.h"

namespace laywright {

std::string in_mm(double mm) { return rough_size_text(mm, false); }

std::string in_mm_and_d(double mm, double d) {
  const double ratio = mm / d;
  if (ratio < 0.995) return fmt::format("{} ({} of the fiber's diameter)", in_mm(mm), short_figure(ratio, 2));
  if (ratio < 9.95) return fmt::format("{} ({} fiber diameters)", in_mm(mm), figure(ratio, 1));
  return fmt::format("{} ({} fiber diameters)", in_mm(mm), figure(ratio, 0));
}

std::string layers_of(const Finding& finding) {
  if (finding.layer == finding.last_layer) return fmt::format("layer {}", finding.layer);
  return fmt::format("layers {} to {}", finding.layer, finding.last_layer);
}

const char* name_of(Side side) { return side == Side::left ? "left" : "right"; }

std::string place_of(double x_mm, double width_mm, double d) {
  const Side side = x_mm <= 0.5 * width_mm ? Side::left : Side::right;
  const double from_flange = side == Side::left ? x_mm : width_mm - x_mm;
  if (from_flange < d) return fmt::format("at the {} flange", name_of(side));
  return fmt::format("{} from the {} flange", in_mm(from_flange), name_of(side));
}

std::string count_of(int count) { return figure(count, 0); }

std::string round_of(const Finding& finding) {
  const double span = finding.angle_deg[1] - finding.angle_deg[0];
  if (span >= 359.5) return "all round the spool";
  return fmt::format("over {} degrees of the spool", figure(span, span < 9.95 ? 1 : 0));
}

std::string along_of(double length_mm) {
  const double m = length_mm / 1000.0;
  const int decimals = m < 9.95 ? 2 : m < 99.5 ? 1 : 0;
  return fmt::format("{} of fiber from the start", amount_text(Amount::fiber_length, m, decimals, false));
}

}  // namespace laywright
