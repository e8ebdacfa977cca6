// The whole set of reports on a wind.
#pragma once

#include <array>
#include <optional>

#include "base/progress.h"
#include "lay/build.h"
#include "measure/measurements.h"
#include "paper/drawing.h"
#include "paper/file_set.h"
#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

inline constexpr std::array report_names{"summary.txt", "build.json",  "layers.csv",  "findings.csv",
                                         "path.csv",    "section.svg", "section.png", "sheet.pdf"};

struct ReportSettings {
  double section_angle_deg = 0.0;        // of the spool; any value, taken round the circle
  Bitmap sheet_picture;                  // as SetupSheet::picture
  std::optional<WindVerdict> verdict{};  // over draws; none: on this build alone
  std::string drawn_on{};                // as SetupSheet's
};

// Adds every report to the set, without a commit. Returns no issues, or the one that stopped it. When `progress`
// is cancelled, returns early and the set must not be committed.
[[nodiscard]] Issues add_reports(FileSet& files, const Plan& plan, const Build& build,
                                 const Measurements& measurements, const TakeupRun& run,
                                 const ReportSettings& settings, Progress& progress);

}  // namespace laywright
