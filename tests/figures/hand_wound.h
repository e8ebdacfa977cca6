// A wind small enough to be written by hand: two layers of 1 mm fiber on a barrel of 20 mm, eight stations a turn,
// the second layer set square on the first.
#pragma once

#include <cmath>
#include <cstddef>
#include <stdexcept>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

inline Plan hand_plan(double flange_taper_rad = 0.0) {
  PlanDraft draft;
  draft.file = "hand.lay.toml";
  draft.title = "Hand wound";
  draft.spool.barrel_diameter_mm = 20.0;
  draft.spool.flange_diameter_mm = 40.0;
  draft.spool.inside_width_mm = 10.0;
  draft.spool.flange_taper_rad = flange_taper_rad;
  draft.fiber.diameter_mm = 1.0;
  draft.fiber.friction = 0.5;
  draft.traverse.pitch_mm = 1.0;
  draft.traverse.left_stop_mm = 0.5;
  draft.traverse.right_stop_mm = 0.5;
  draft.traverse.free_length_mm = 50.0;
  draft.wind.turns = 18.0;
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) throw std::logic_error(to_text(plan.issues().front()));
  return plan.value();
}

// Layers of `turns` turns each at pitch `pitch`, the first at radius `r`, each other `rise` above.
inline Build helical_build(int layers, int turns, double pitch, double r, double rise) {
  Build build;
  build.stations_per_turn = 8;
  build.fiber_diameter_mm = 1.0;
  build.seed = 7;
  const auto x_grid = Grid::over(-5.0, 1000.0), r_grid = Grid::over(0.0, 500.0);
  build.nodes = NodeStore(x_grid, r_grid);
  const int nodes = turns * build.stations_per_turn;
  for (int layer = 0; layer < layers; ++layer) {
    const int direction = layer % 2 == 0 ? 1 : -1;
    build.strokes.push_back({build.nodes.size(), direction});
    const int last = layer + 1 == layers ? nodes : nodes - 1;  // the next layer begins with the node at the stop
    for (int k = 0; k <= last; ++k) {
      const double share = static_cast<double>(k) / nodes, width = turns * pitch;
      const double x = 0.5 + (direction > 0 ? share : 1.0 - share) * width;
      build.nodes.push(x_grid.nearest(x), r_grid.nearest(r + layer * rise),
                       layer == 0 ? Support::barrel : Support::turn, false);
    }
  }
  build.turns = layers * turns;
  for (int layer = 0; layer < layers; ++layer) {
    build.length_mm += turns * std::hypot(2.0 * std::acos(-1.0) * (r + layer * rise), pitch);
  }
  build.stopped_by = StopReason::turns;
  return build;
}

inline Build hand_build() { return helical_build(2, 9, 1.0, 10.5, 1.0); }

inline Measurements hand_measurements() {
  Measurements m;
  m.layers = {{1, 1, 9.0, 593.83, 21.0, {}, 12.5, 0.0, 0, 0.0},
              {2, -1, 9.0, 650.375, 23.0, 1.0, 0.0, 0.0, 17, 0.125}};
  m.surface = {{2.5, 7.5}, {12.0, 12.0}, {12.0, 12.0}, {12.0, 12.0}};
  m.outer_diameter = {24.125, 24.25, 24.375, 24.5, SurfacePlace{0.5, 45.0}};
  m.unfinished_layer = UnfinishedLayer{2, 9.0, 0.75, {24.625, 24.75, 24.875}};
  m.edges = EdgeShapes{EdgeShape{0.5, 0.125}, EdgeShape{0.25, 0.0625}};
  m.layers.front().edges = m.edges;
  m.fill_factor = 0.78125;
  m.rim_clearance_mm = 7.75;
  m.fiber_mass_kg = 0.0625;
  Finding gap;
  gap.kind = FindingKind::flange_gap;
  gap.layer = 1;
  gap.last_layer = 2;
  gap.turn = 8.5;
  gap.side = Side::right;
  gap.x_mm = {9.25, 10.0};
  gap.angle_deg = {45.0, 270.0};
  gap.length_mm = {560.0, 1244.0};
  gap.size_mm = 0.75;
  gap.size_d = 0.75;
  gap.occurrences = 3;
  gap.severity = FindingSeverity::worth_a_look;
  gap.text =
      "The last turn lies 0.75 mm from the right flange, so a turn of the next layer can \"drop\", and be trapped.";
  Finding rim;
  rim.kind = FindingKind::rim_overrun;
  rim.layer = rim.last_layer = 2;
  rim.severity = FindingSeverity::grave;
  rim.text = "The fiber would pass the rim.";
  m.findings = {gap, rim};
  return m;
}

}  // namespace laywright
