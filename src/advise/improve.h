// Better settings: a search for the wind whose figures are good by the verdict (merit.h), with as much room as can be had.
//
// What is known of good winds (verdict/usual_settings.h, the stop at which the fiber reaches its flange) and a seeded lattice
// over the ranges say where it is good, NLopt's Subplex (Rowan 1990) goes on from the best of it; both on the first layers,
// at `search_fidelity`. The best few are then laid in full: several draws (draws.h), each setting a step up and down, the fiber
// at both ends of its tolerance where the plan has one; how the fiber comes off again is weighed there, too. What counts is the
// mean of all, so that a setting that must be met exactly loses against one that need not; and what is not better than the plan
// on each of its draws is no proposal. A plan that is good on all its draws is left as it is, unless weights are given.
//
// Tension and side of the start come last (late_settings.h): a tension by which the pull is not good is set so that it is; else
// both are tried at the best that was found where that still is not good, so that a search that needs neither takes no longer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advise/merit.h"
#include "advise/searchable_setting.h"
#include "advise/trial.h"
#include "base/result.h"
#include "jobs/parallel.h"

namespace laywright {

struct ImproveSettings {
  LaySettings lay;
  int threads = threads_at_hand();
  int trials = 160;  // of the search; the confirmation comes on top
  int best = 3;      // how many are told
  std::optional<MeritWeights> weights;
  std::vector<SearchRequest> requests;
  bool drift = false;  // let the stops move outward from layer to layer
};

// A plan and what comes of it over its variants: its draws first, then each setting a step off.
struct Proposal {
  PlanDraft draft;
  std::vector<double> values;  // of the settings
  Outcome outcome;             // as it is set
  std::vector<Check> pull;     // as it is set: what grows with the tension
  WindVerdict verdict;         // as it is set, with what the machine bears
  int draws = 0, good_draws = 0;
  int well_laid_draws = 0;                                // good but for their pull
  int variants = 0, good_variants = 0, bad_variants = 0;  // bad: do not wind
  std::vector<double> draw_costs;                         // infinite where a draw could not be laid
  double cost = 0.0;  // mean over the variants, and a little for each setting that is moved
  std::string text;   // what it gains and what it costs, against the plan
};

struct Improvement {
  std::vector<SearchableSetting> searchables;
  Proposal plan;               // the plan as it is, seen the same way
  std::vector<Proposal> best;  // best first; each better than the plan on all draws
  bool leave_it = false;       // the plan is good on all its draws; nothing was searched
  int trials = 0;
  int layers_tried = 0;
  std::string text;  // one or two sentences
};

// Errors: a request that cannot be followed, nothing left to turn, or cancelled (text `stopped_text`).
[[nodiscard]] Result<Improvement> improve(const Plan& plan, const ImproveSettings& settings, Progress& progress);

}  // namespace laywright
