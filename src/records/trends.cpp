#include "records/trends.h"

#include <algorithm>
#include <map>
#include <optional>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "records/beside_plan.h"

namespace laywright {
namespace {

struct Watched {
  TrendQuantity quantity;
  std::optional<ReadQuantity> read;  // else a setting that was fitted
  const char* key = "";
};

const std::vector<Watched>& watched() {
  static const std::vector<Watched> all{
      {{"diameter_left", "outer diameter at the left, measured less planned", "mm"}, ReadQuantity::diameter_left},
      {{"diameter_middle", "outer diameter in the middle, measured less planned", "mm"},
       ReadQuantity::diameter_middle},
      {{"diameter_right", "outer diameter at the right, measured less planned", "mm"}, ReadQuantity::diameter_right},
      {{"layer_turns", "turns of a layer, counted less planned", "turns"}, ReadQuantity::layer_turns},
      {{"pitch", "pitch, as fitted less as planned", "mm"}, std::nullopt, "traverse.pitch"},
      {{"left_stop", "left stop, as fitted less as planned", "mm"}, std::nullopt, "traverse.left_stop"},
      {{"right_stop", "right stop, as fitted less as planned", "mm"}, std::nullopt, "traverse.right_stop"},
      {{"lost_motion", "lost motion, as fitted less as planned", "mm"},
       std::nullopt,
       "traverse.reversal.lost_motion"},
      {{"dwell", "dwell at a stop, as fitted less as planned", "turns"}, std::nullopt, "traverse.reversal.turns"},
  };
  return all;
}

std::optional<double> value_of(const Watched& what, const SpoolRecord& record) {
  if (what.read) return outermost_difference(record, *what.read);
  for (const FittedSetting& each : fitted_of(record)) {
    // What the readings do not tell is what was believed before, and no news of the machine.
    if (each.key == what.key && each.told_by_readings) return each.value - each.planned;
  }
  return std::nullopt;
}

bool is_wanted(const std::string& name, const std::vector<std::string>& quantities) {
  return quantities.empty() || std::find(quantities.begin(), quantities.end(), name) != quantities.end();
}

}  // namespace

const std::vector<TrendQuantity>& trend_quantities() {
  static const std::vector<TrendQuantity> all = [] {
    std::vector<TrendQuantity> list;
    for (const Watched& each : watched()) list.push_back(each.quantity);
    return list;
  }();
  return all;
}

Trends trends_of(const std::vector<SpoolRecord>& records, const std::vector<std::string>& quantities) {
  std::map<std::string, std::vector<const SpoolRecord*>> machines;
  Trends trends;
  for (const SpoolRecord& record : records) {
    machines[record.machine].push_back(&record);
    if (fitted_of(record).empty() && !as_wound_of(record).readings.empty())
      trends.not_fitted.push_back(record.number);
  }
  for (auto& [machine, of_machine] : machines) {
    std::stable_sort(of_machine.begin(), of_machine.end(), [](const SpoolRecord* a, const SpoolRecord* b) {
      return a->date != b->date ? a->date < b->date : a->number < b->number;
    });
    for (const Watched& what : watched()) {
      if (!is_wanted(what.quantity.name, quantities)) continue;
      Trend trend{machine, what.quantity, {}, {}};
      std::vector<double> values;
      for (const SpoolRecord* record : of_machine) {
        const std::optional<double> value = value_of(what, *record);
        if (!value) continue;
        values.push_back(*value);
        trend.spools.push_back({record->number, record->spool, record->date});
      }
      if (values.empty()) continue;
      trend.chart = control_chart(values);
      trends.all.push_back(std::move(trend));
    }
  }
  return trends;
}

std::string charted(double value) {
  return fmt::format("{}{}", value < 0.0 ? '-' : '+', short_figure(std::abs(value), 4));
}

std::vector<std::string> out_of_control(const Trend& trend) {
  const std::vector<ControlPoint>& points = trend.chart.points;
  const auto spool = [&](std::size_t i) {
    return fmt::format("spool {} (record {}, {})", visible(trend.spools[i].spool), trend.spools[i].number,
                       trend.spools[i].date);
  };
  std::vector<std::string> said;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ControlPoint& point = points[i];
    if (point.beyond) {
      said.push_back(fmt::format("{}: {} {} is {} the limit of {}; something was other than with the spools before.",
                                 spool(i), charted(point.value), trend.quantity.unit,
                                 point.side > 0 ? "over" : "under",
                                 charted(point.side > 0 ? trend.chart.upper : trend.chart.lower)));
    }
    if (point.range_beyond) {
      said.push_back(
          fmt::format("{}: a jump of {} {} from the spool before, where {} is usual at most; something was "
                      "changed between them, or slipped.",
                      spool(i), short_figure(point.moving_range, 4), trend.quantity.unit,
                      short_figure(trend.chart.range_limit, 4)));
    }
    // A run is told once, at its end.
    const bool ends = i + 1 == points.size() || points[i + 1].side != point.side;
    if (point.run && ends) {
      std::size_t first = i;
      while (first > 0 && points[first - 1].side == point.side) --first;
      said.push_back(fmt::format("{} to {}: {} in a row on the {} side of the mean; the machine has shifted.",
                                 spool(first), spool(i), i - first + 1, point.side > 0 ? "upper" : "lower"));
    }
  }
  return said;
}

}  // namespace laywright
