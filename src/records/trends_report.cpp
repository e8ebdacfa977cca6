#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "figures/csv_field.h"
#include "figures/document_text.h"
#include "figures/figures.h"
#include "records/record_text.h"
#include "records/trend_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

std::string trend_text(const Trend& trend) {
  const ControlChart& chart = trend.chart;
  std::string text = trend_heading(trend) + '\n';
  for (const std::string& line : limit_lines(trend)) text += fmt::format("  {}\n", line);
  text +=
      fmt::format("  {:>6}  {:<10}  {:<14}  {:>10}  {:>12}\n", "record", "date", "spool", "value", "moving range");
  for (std::size_t i = 0; i < chart.points.size(); ++i) {
    const ControlPoint& point = chart.points[i];
    std::string line = fmt::format("  {:>6}  {:<10}  {:<14}  {:>10}  {:>12}  {}", trend.spools[i].number,
                                   trend.spools[i].date, readable(trend.spools[i].spool, 14), charted(point.value),
                                   i == 0 ? "-" : short_figure(point.moving_range, 4), flag_words(point));
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + '\n';
  }
  for (const std::string& sentence : control_lines(trend)) text += paragraph(sentence, 2);
  return text;
}

}  // namespace

std::string trends_text(const Trends& trends) {
  std::string text;
  for (const Trend& trend : trends.all) {
    if (!text.empty()) text += '\n';
    text += trend_text(trend);
  }
  if (trends.all.empty()) text = fmt::format("{}\n", nothing_to_watch);
  if (!trends.not_fitted.empty())
    text += '\n' + paragraph(fmt::format("{} `laywright record fit NUMBER` does it, and {}", not_fitted_line(trends),
                                         then_watched),
                             0);
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
                         quoted(flag_words(point)));
    }
  }
  return csv;
}

}  // namespace laywright
