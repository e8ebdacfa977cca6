// Small lay plans drawn from a fuzzer's bytes, over all fields and up to the ends of what a plan may say.
#pragma once

#include "fuzz/bytes.h"
#include "lay/lay.h"
#include "plan/lay_plan.h"

namespace laywright::fuzz {

// A draft and how to lay it. Most are sound; the wind is cut so that about `most_nodes` are laid at most.
struct DrawnWind {
  PlanDraft draft;
  LaySettings settings;
};

[[nodiscard]] DrawnWind drawn_wind(Bytes& bytes, double most_nodes);

}  // namespace laywright::fuzz
