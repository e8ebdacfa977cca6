// How a machine goes from spool to spool.
#pragma once

#include <string>
#include <vector>

#include "records/control_chart.h"
#include "records/spool_record.h"

namespace laywright {

// What can be watched: of diameters and turns what was measured less what was planned, at the outermost reading; of
// settings what a fit found less what was planned.
struct TrendQuantity {
  std::string name;   // stable: "diameter_middle", "left_stop"
  std::string words;  // "outer diameter in the middle, measured less planned"
  std::string unit;   // "mm" or "turns"
};
[[nodiscard]] const std::vector<TrendQuantity>& trend_quantities();

struct Trend {
  std::string machine;  // may be empty: of records that name none
  TrendQuantity quantity;
  struct Spool {
    long long number = 0;
    std::string spool, date;
  };
  std::vector<Spool> spools;  // of each point of the chart
  ControlChart chart;
};

struct Trends {
  std::vector<Trend> all;             // by machine, then in the order of quantities; none without values
  std::vector<long long> not_fitted;  // that have readings, but no fit yet
};

// Of the records by date and number. `quantities`: names; empty: all.
[[nodiscard]] Trends trends_of(const std::vector<SpoolRecord>& records, const std::vector<std::string>& quantities);

// A value or a limit of a chart, with its sign and four digits: "+0.1234".
[[nodiscard]] std::string charted(double value);

// What is out of control, each a sentence; empty where all is in control.
[[nodiscard]] std::vector<std::string> out_of_control(const Trend& trend);

}  // namespace laywright
