// A wind that is followed: readings that were taken while it is wound, held against its plan; what most likely is off; what to
// change now; and what the spool will be, with the change and without.
#pragma once

#include <optional>
#include <vector>

#include "follow/change.h"
#include "follow/forecast.h"
#include "follow/likely.h"
#include "follow/planned.h"

namespace laywright {

struct FollowSettings {
  LaySettings lay;
  int threads = threads_at_hand();
  ReadingErrors errors;
  int plan_draws = usual_plan_draws;
  int draws = forecast_draws;
};

struct Followed {
  Beside beside;
  bool on_plan = true;
  FitModel::Place at;  // of the last reading

  std::optional<Likely> likely;  // where it is off
  // What to set; empty: nothing is to be changed, or nothing that can be set now makes it better.
  NowChange change;

  // Laid to the end with what most likely is off, as it is told, which holds from the start: nothing changed, and with the change from the last
  // reading on. On plan the first is the plan itself; the second is there where there is a change.
  std::optional<Forecast> unchanged, changed;
};

// Errors: as beside_plan() and likely_off(); what was found cannot be laid to the end.
[[nodiscard]] Result<Followed> follow(const Plan& plan, const AsWound& wound, const FollowSettings& settings,
                                      Progress& progress);

}  // namespace laywright
