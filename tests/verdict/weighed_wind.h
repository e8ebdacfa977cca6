// A wind written down, to be weighed: 1 km of fiber of 1 mm, level and without a flaw until a test spoils it.
#pragma once

#include <catch2/catch.hpp>

#include "verdict/verdict.h"
#include "verdict/verdict_words.h"

namespace laywright::weighed {

struct WeighedWind {
  PlanDraft draft;
  Build build;
  Measurements m;
  TakeupRun run;

  WeighedWind() {
    draft.spool = {100.0, 200.0, 40.0, 0.0, 0.0, 0.0, {}};
    draft.fiber.diameter_mm = 1.0;
    draft.fiber.friction = 0.5;
    draft.traverse.pitch_mm = 1.04;
    draft.traverse.left_stop_mm = 0.5;
    draft.traverse.right_stop_mm = 0.5;
    draft.traverse.free_length_mm = 50.0;
    draft.wind.length_mm = 1.0e6;
    build.length_mm = 1.0e6;
    build.fiber_diameter_mm = 1.0;
    build.seed = 3;
    m.layers.emplace_back();
    m.outer_diameter = {180.0, 180.0, 180.0, 181.0, {}};
    m.edges = EdgeShapes{};
    m.fill_factor = 0.8;
    m.rim_clearance_mm = 20.0;
  }

  void find(FindingKind kind, double size_d, int places = 1, std::optional<Side> side = {}) {
    Finding found;
    found.kind = kind;
    found.size_d = found.size_mm = size_d;
    found.occurrences = places;
    found.side = side;
    m.findings.push_back(found);
  }
  EdgeShape& edge(Side side) { return (*m.edges)[static_cast<std::size_t>(side)]; }

  [[nodiscard]] Plan plan() const {
    Result<Plan> checked = check(draft);
    REQUIRE(checked.ok());
    return std::move(checked).value();
  }
  [[nodiscard]] WindVerdict verdict() const { return verdict_of(plan(), build, m, &run); }
};

inline const Check& check_of(const WindVerdict& verdict, Weighed what, std::optional<Side> side = {}) {
  const auto found = std::find_if(verdict.checks.begin(), verdict.checks.end(),
                                  [&](const Check& each) { return each.what == what && each.side == side; });
  REQUIRE(found != verdict.checks.end());
  return *found;
}

inline bool weighs(const WindVerdict& verdict, Weighed what) {
  return std::any_of(verdict.checks.begin(), verdict.checks.end(),
                     [&](const Check& each) { return each.what == what; });
}

inline const Check& decided(const WindVerdict& verdict) { return verdict.checks.at(verdict.deciding); }

}  // namespace laywright::weighed
