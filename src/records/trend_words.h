// What is said of a trend, piece by piece: the command puts it into text, the window beside a chart.
#pragma once

#include <string>
#include <vector>

#include "records/trends.h"

namespace laywright {

// "winder 2"; or that the records name none.
[[nodiscard]] std::string machine_words(const Trend& trend);
// "winder 2: left stop, as fitted less as planned, mm"
[[nodiscard]] std::string trend_heading(const Trend& trend);
// Mean and limits, and how far these hold.
[[nodiscard]] std::vector<std::string> limit_lines(const Trend& trend);
// That it is in control, or each thing that says otherwise; empty of a single spool.
[[nodiscard]] std::vector<std::string> control_lines(const Trend& trend);
// "beyond a limit, a run"; empty where it is as usual.
[[nodiscard]] std::string flag_words(const ControlPoint& point);

inline constexpr const char* nothing_to_watch = "No record has readings that its plan can be compared with.";
// "Of 2 records with readings the settings were not fitted yet: 3, 4."; what to do about it, and then:
[[nodiscard]] std::string not_fitted_line(const Trends& trends);
inline constexpr const char* then_watched = "stops, pitch and dwell are watched, too.";

}  // namespace laywright
