#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/readable.h"
#include "figures/csv_field.h"
#include "figures/document_text.h"
#include "figures/figures.h"
#include "records/record_text.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t columns = 96;

std::string machine_name(const Trend& trend) {
  return trend.machine.empty() ? "no machine named" : visible(trend.machine);
}

std::string flags_of(const ControlPoint& point) {
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

std::string trend_text(const Trend& trend) {
  const ControlChart& chart = trend.chart;
  std::string text = fmt::format("{}: {}, {}\n", machine_name(trend), trend.quantity.words, trend.quantity.unit);
  text +=
      chart.points.size() < 2
          ? std::string("  One spool; limits follow from two on.\n")
          : fmt::format("  mean {:+.4g}, limits {:+.4g} to {:+.4g}, mean moving range {:.4g}, its limit {:.4g}\n",
                        chart.mean, chart.lower, chart.upper, chart.mean_range, chart.range_limit);
  if (chart.points.size() >= 2 && chart.points.size() < values_for_limits)
    text +=
        fmt::format("  Of {} spools; limits of fewer than {} are rough.\n", chart.points.size(), values_for_limits);
  text +=
      fmt::format("  {:>6}  {:<10}  {:<14}  {:>10}  {:>12}\n", "record", "date", "spool", "value", "moving range");
  for (std::size_t i = 0; i < chart.points.size(); ++i) {
    const ControlPoint& point = chart.points[i];
    std::string line =
        fmt::format("  {:>6}  {:<10}  {:<14}  {:>10}  {:>12}  {}", trend.spools[i].number, trend.spools[i].date,
                    readable(trend.spools[i].spool, 14), fmt::format("{:+.4g}", point.value),
                    i == 0 ? "-" : fmt::format("{:.4g}", point.moving_range), flags_of(point));
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + '\n';
  }
  const std::vector<std::string> said = out_of_control(trend);
  if (said.empty() && chart.points.size() >= 2) text += "  In control: nothing says that the machine has changed.\n";
  for (const std::string& sentence : said) text += wrapped(fmt::format("Out of control: {}", sentence), columns, 2);
  return text;
}

}  // namespace

std::string trends_text(const Trends& trends) {
  std::string text;
  for (const Trend& trend : trends.all) {
    if (!text.empty()) text += '\n';
    text += trend_text(trend);
  }
  if (trends.all.empty()) text = "No record has readings that its plan can be compared with.\n";
  if (!trends.not_fitted.empty()) {
    text += '\n';
    text += wrapped(
        fmt::format(
            "Of {} record{} with readings the settings were not fitted yet: {}. `laywright record fit NUMBER` "
            "does it, and stops, pitch and dwell are watched, too.",
            trends.not_fitted.size(), trends.not_fitted.size() == 1 ? "" : "s", fmt::join(trends.not_fitted, ", ")),
        columns, 0);
  }
  return text;
}

std::string trends_json(const Trends& trends) {
  Json all = Json::array();
  for (const Trend& trend : trends.all) {
    Json points = Json::array();
    for (std::size_t i = 0; i < trend.spools.size(); ++i) {
      const ControlPoint& point = trend.chart.points[i];
      points.push_back({{"record", trend.spools[i].number},
                        {"spool", trend.spools[i].spool},
                        {"date", trend.spools[i].date},
                        {"value", point.value},
                        {"moving_range", i == 0 ? Json(nullptr) : Json(point.moving_range)},
                        {"beyond_limit", point.beyond},
                        {"range_beyond_limit", point.range_beyond},
                        {"run", point.run}});
    }
    all.push_back({{"machine", trend.machine.empty() ? Json(nullptr) : Json(trend.machine)},
                   {"quantity", trend.quantity.name},
                   {"unit", trend.quantity.unit},
                   {"mean", trend.chart.mean},
                   {"lower_limit", trend.chart.lower},
                   {"upper_limit", trend.chart.upper},
                   {"mean_moving_range", trend.chart.mean_range},
                   {"moving_range_limit", trend.chart.range_limit},
                   {"in_control", trend.chart.in_control()},
                   {"out_of_control", out_of_control(trend)},
                   {"points", std::move(points)}});
  }
  return document_text({{"format", "lay-trends 1"}, {"trends", std::move(all)}, {"not_fitted", trends.not_fitted}});
}

std::string trends_csv(const Trends& trends) {
  std::string csv =
      "machine,quantity,unit,record,spool,date,value,moving_range,mean,lower_limit,upper_limit,moving_range_limit,"
      "out_of_control\n";
  for (const Trend& trend : trends.all) {
    const ControlChart& chart = trend.chart;
    for (std::size_t i = 0; i < trend.spools.size(); ++i) {
      const ControlPoint& point = chart.points[i];
      csv += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{},{}\n", quoted(trend.machine), trend.quantity.name,
                         trend.quantity.unit, trend.spools[i].number, quoted(trend.spools[i].spool),
                         trend.spools[i].date, field(point.value), i == 0 ? "" : field(point.moving_range),
                         field(chart.mean), field(chart.lower), field(chart.upper), field(chart.range_limit),
                         quoted(flags_of(point)));
    }
  }
  return csv;
}

}  // namespace laywright
