#include "records/trend_words.h"

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/readable.h"

namespace laywright {

std::string machine_words(const Trend& trend) {
  return trend.machine.empty() ? "no machine named" : visible(trend.machine);
}

std::string flag_words(const ControlPoint& point) {
  std::string flags;
  const auto add = [&](bool is, const char* word) {
    if (!is) return;
    if (!flags.empty()) flags += ", ";
    flags += word;
  };
  add(point.beyond, "beyond a limit");
  add(point.range_beyond, "a jump");
  add(point.run, "a run");
  return flags;
}

std::string trend_heading(const Trend& trend) {
  return fmt::format("{}: {}, {}", machine_words(trend), trend.quantity.words, trend.quantity.unit);
}

std::vector<std::string> limit_lines(const Trend& trend) {
  const ControlChart& chart = trend.chart;
  if (chart.points.size() < 2) return {"One spool; limits follow from two on."};
  std::vector<std::string> lines{fmt::format("mean {}, limits {} to {}, mean moving range {}, its limit {}",
                                             charted(chart.mean), charted(chart.lower), charted(chart.upper),
                                             short_figure(chart.mean_range, 4), short_figure(chart.range_limit, 4))};
  if (chart.points.size() < values_for_limits)
    lines.push_back(
        fmt::format("Of {} spools; limits of fewer than {} are rough.", chart.points.size(), values_for_limits));
  return lines;
}

std::vector<std::string> control_lines(const Trend& trend) {
  std::vector<std::string> lines = out_of_control(trend);
  for (std::string& line : lines) line = fmt::format("Out of control: {}", line);
  if (lines.empty() && trend.chart.points.size() >= 2)
    lines.emplace_back("In control: nothing says that the machine has changed.");
  return lines;
}

std::string not_fitted_line(const Trends& trends) {
  return fmt::format("Of {} with readings the settings were not fitted yet: {}.",
                     counted(trends.not_fitted.size(), "record"), fmt::join(trends.not_fitted, ", "));
}

}  // namespace laywright
