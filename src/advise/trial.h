// Trials: a plan with some values changed, laid and measured, for what comes of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advise/outcome.h"
#include "base/progress.h"
#include "jobs/parallel.h"
#include "lay/lay.h"
#include "plan/lay_plan.h"
#include "verdict/verdict.h"

namespace laywright {

// A value of a plan set to another: a key path of fields.h, a number in the unit used inside.
struct Change {
  std::string path;
  double value = 0.0;

  friend bool operator==(const Change&, const Change&) = default;
};

// The draft with the changes, in their order. Precondition: its fields have those paths.
[[nodiscard]] PlanDraft with_changes(PlanDraft draft, const std::vector<Change>& changes);

struct Trial {
  Outcome outcome;
  std::vector<Finding> findings;  // gravest first
  std::vector<Check> checks;      // of the verdict: how the fiber lies, and where asked for, how it comes off again
  std::vector<Check> pull;        // and what grows with the tension; without bend and speed
  std::optional<WindVerdict> verdict;  // on all of it, where it was asked for
};

// Fineness of the trials of a search: half the stations. Outer diameters stay within 0.1 %, fill within 0.5 %; what a
// search finds is confirmed at full fidelity.
inline constexpr double search_fidelity = 0.5;

// None where the plan is not sound, or could not be laid, or `progress` was cancelled.
// `judged`: with its verdict, which takes a fifth longer.
[[nodiscard]] std::optional<Trial> try_plan(const PlanDraft& draft, const LaySettings& settings, Progress& progress,
                                            bool judged = false);

struct TrialOrder {
  PlanDraft draft;
  LaySettings settings;
  bool judged = false;
};

// All of them, on so many threads; results in the order of the orders, whatever the threads.
[[nodiscard]] std::vector<std::optional<Trial>> try_all(const std::vector<TrialOrder>& orders, int threads,
                                                        const Stretch& stretch);

// The plan, ended after so many turns: the first turns of a wind do not know how long it will go on.
[[nodiscard]] PlanDraft shortened(PlanDraft draft, double turns);

}  // namespace laywright
