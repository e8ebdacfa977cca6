// Better settings: a search for the build that keeps the plan's limits and has least gap length, least edge deviation
// and least rim use, in that order or by a person's weights.
//
// A seeded lattice over the ranges finds where it is good, NLopt's Subplex (Rowan 1990) goes on from the best of it; both
// on the first layers, at `search_fidelity`. The best few are then laid in full: several draws (draws.h), each setting a
// step of its dial up and down, the fiber at both ends of its tolerance where the plan has one. What counts is the mean
// of all, so that a setting that must be met exactly loses against one that need not.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advise/knob.h"
#include "advise/merit.h"
#include "advise/parallel.h"
#include "advise/trial.h"
#include "base/result.h"

namespace laywright {

struct ImproveSettings {
  LaySettings lay;
  int threads = threads_at_hand();
  int trials = 160;  // of the search; the confirmation comes on top
  int best = 3;      // how many are told
  std::optional<MeritWeights> weights;
  std::vector<KnobWish> wishes;
  bool drift = false;  // let the stops move outward from layer to layer
};

// A plan and what comes of it over its variants: other draws, and each dial a step off.
struct Proposal {
  PlanDraft draft;
  std::vector<double> values;  // of the knobs
  Outcome outcome;             // as it is set
  Merit mean;                  // over the variants
  int variants = 0, keep_limits = 0;
  double cost = 0.0;  // of the mean
  std::string text;   // what it gains and what it costs, against the plan
};

struct Improvement {
  std::vector<Knob> knobs;
  Proposal plan;               // the plan as it is, seen the same way
  std::vector<Proposal> best;  // best first; those that are better than the plan
  int trials = 0;
  int layers_tried = 0;
  std::string text;  // one or two sentences
};

// Errors: a wish that cannot be followed, nothing left to turn, or cancelled (text `stopped_text`).
[[nodiscard]] Result<Improvement> improve(const Plan& plan, const ImproveSettings& settings, Progress& progress);

}  // namespace laywright
