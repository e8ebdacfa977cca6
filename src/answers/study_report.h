// A study as tables and text.
#pragma once

#include <string>
#include <string_view>

#include "advise/study.h"

namespace laywright {

// One record per build: its number, the keys that change (in the units used inside: mm, rad, N; a share as such), then
// every figure of outcome_figures(). A build that could not be laid has empty figures. RFC 4180, with line feeds.
[[nodiscard]] std::string study_csv(const Study& study);

// Format "lay-study 1": the plan and the study in full, and all rows; a shard of a study is one, too.
[[nodiscard]] std::string study_json(const Study& study);
// Reads what study_json wrote. Errors where it is anything else.
[[nodiscard]] Result<Study> study_from_json(std::string_view text, const std::string& file);

// The extremes of a grid; spread, chance and shares of tolerances. Precondition: a complete study.
[[nodiscard]] std::string study_text(const Study& study);

// Key and value of a row as a person reads it: "0.26 mm"; a seed as such.
[[nodiscard]] std::string study_value(const Study& study, const std::string& path, double value);

}  // namespace laywright
