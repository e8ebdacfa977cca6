#include "measure/phrases.h"

#include <fmt/format.h>

#include <cmath>

namespace laywright {

std::string in_mm(double mm) {
  const double size = std::abs(mm);
  const int decimals = size < 0.0995 ? 3 : size < 0.995 ? 2 : size < 9.95 ? 1 : 0;
  return fmt::format("{:.{}f} mm", mm, decimals);
}

std::string in_mm_and_d(double mm, double d) {
  const double ratio = mm / d;
  if (ratio < 0.995) return fmt::format("{} ({:.2g} of the fiber's diameter)", in_mm(mm), ratio);
  if (ratio < 9.95) return fmt::format("{} ({:.1f} fiber diameters)", in_mm(mm), ratio);
  return fmt::format("{} ({:.0f} fiber diameters)", in_mm(mm), ratio);
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

std::string count_of(int count) {
  if (count < 1000) return std::to_string(count);
  return fmt::format("{},{:03}", count_of(count / 1000), count % 1000);
}

std::string round_of(const Finding& finding) {
  const double span = finding.angle_deg[1] - finding.angle_deg[0];
  if (span >= 359.5) return "all round the spool";
  return fmt::format("over {:.{}f} degrees of the spool", span, span < 9.95 ? 1 : 0);
}

std::string along_of(double length_mm) {
  const double m = length_mm / 1000.0;
  return fmt::format("{:.{}f} m of fiber from the start", m, m < 9.95 ? 2 : m < 99.5 ? 1 : 0);
}

}  // namespace laywright
