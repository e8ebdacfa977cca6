// One stroke of a build with what is known about it, as every measurement of a layer sees it.
#pragma once

#include <cstddef>

#include "lay/build.h"
#include "measure/fiber_line.h"
#include "measure/neighbours.h"
#include "plan/lay_plan.h"

namespace laywright {

struct StrokeView {
  const Plan& plan;
  const Build& build;
  const FiberLine& line;
  std::size_t stroke;
  const Neighbours& here;    // of this stroke
  const Neighbours& before;  // of the stroke before; empty for the first
  std::size_t first, end;    // its nodes, `end` one past the last

  StrokeView(const Plan& its_plan, const Build& its_build, const FiberLine& its_line, std::size_t its_stroke,
             const Neighbours& its_neighbours, const Neighbours& neighbours_before)
      : plan(its_plan),
        build(its_build),
        line(its_line),
        stroke(its_stroke),
        here(its_neighbours),
        before(neighbours_before),
        first(its_build.strokes[its_stroke].first_node),
        end(its_build.end_of(its_stroke)) {}

  [[nodiscard]] int layer() const { return static_cast<int>(stroke) + 1; }
  [[nodiscard]] std::size_t stations() const { return static_cast<std::size_t>(build.stations_per_turn); }
  [[nodiscard]] int direction() const { return build.strokes[stroke].direction; }
  [[nodiscard]] double diameter() const { return build.fiber_diameter_mm; }
  [[nodiscard]] double gap_limit() const { return plan.limits().gap_d * diameter(); }

  // Turns of the spool that it lasted, the last stroke up to the end of the wind.
  [[nodiscard]] double turns() const;

  // Mean axial advance per turn, mm: the width that the stroke covers over its turns.
  [[nodiscard]] double pitch() const;

  // Clear distance from a node to the next turn of the stroke on its right, mm; negative when there is none.
  [[nodiscard]] double gap_right_of(std::size_t node) const {
    const std::size_t next = here.right_of(node);
    if (next == Neighbours::no_node) return -1.0;
    const double apart = build.nodes.x(next) - build.nodes.x(node);
    return build.diameters.even() ? apart - diameter() : apart - (build.half_mm(node) + build.half_mm(next));
  }
};

}  // namespace laywright
