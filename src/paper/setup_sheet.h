// The set-up sheet: two pages for the person at the winder. What to set, what to expect on the way, what to look for,
// fields to fill in by hand, and cautions.
//
// Every figure on it stands in lay-build 1 too (json.h); settings stand as their owner wrote them, with the other unit
// system beside them. It is legible in black and white.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "lay/build.h"
#include "measure/measurements.h"
#include "paper/drawing.h"
#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

enum class Paper { a4, letter };

struct SetupSheet {
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  const TakeupRun& run;
  Paper paper = Paper::a4;
  Bitmap picture;  // of the build on white, its box left open; without pixels: its outline is drawn instead
  std::optional<WindVerdict> verdict{};  // over draws; none: on this build alone
  std::string drawn_on{};                // a date; empty: left out
};

inline constexpr int setup_pages = 2;

// Precondition: build, measurements and run belong to the plan.
[[nodiscard]] std::vector<Drawing> draw_setup_sheet(const SetupSheet& sheet);

}  // namespace laywright
