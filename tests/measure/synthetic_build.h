// Builds written down rather than laid, so that every figure measured on them has a closed form.
#pragma once

#include <cmath>
#include <functional>
#include <numbers>

#include "lay/build.h"
#include "measure/fiber_line.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright::synthetic {

inline constexpr double pi = std::numbers::pi;

struct Place {
  double x = 0.0, r = 0.0;
  Support support = Support::turn;
  bool rides_up = false;
};

// A sound plan for a spool of barrel 100 and 20.5 wide with 1 mm fiber, to be changed before check().
inline PlanDraft draft() {
  PlanDraft draft;
  draft.title = "synthetic";
  draft.spool.barrel_diameter_mm = 100.0;
  draft.spool.flange_diameter_mm = 160.0;
  draft.spool.inside_width_mm = 20.5;
  draft.fiber.diameter_mm = 1.0;
  draft.fiber.friction = 0.5;
  draft.traverse.pitch_mm = 1.0;
  draft.traverse.left_stop_mm = 0.5;
  draft.traverse.right_stop_mm = 0.5;
  draft.traverse.free_length_mm = 50.0;
  draft.wind.turns = 100.0;
  return draft;
}

inline Plan plan_of(const PlanDraft& wanted) {
  Result<Plan> plan = check(wanted);
  return std::move(plan).value();
}

// Strokes are added one after the other; each is a function of the turns since its start.
class BuildMaker {
 public:
  BuildMaker(const Plan& plan, int stations) {
    build_.stations_per_turn = stations;
    build_.fiber_diameter_mm = plan.fiber().diameter_mm;
    const double width = plan.spool().inside_width_mm;
    build_.nodes = NodeStore(Grid::over(-width, 2.0 * width), Grid::over(0.0, plan.spool().flange_diameter_mm));
  }

  BuildMaker& stroke(int direction, double turns, const std::function<Place(double turn)>& at) {
    const std::size_t first = build_.nodes.size();
    build_.strokes.push_back({first, direction});
    const auto count = static_cast<std::size_t>(std::llround(turns * build_.stations_per_turn));
    for (std::size_t i = 0; i < count; ++i) push(at(static_cast<double>(i) / build_.stations_per_turn));
    return *this;
  }

  // Ends the wind at the last node, or earlier.
  Build finish() {
    build_.turns = static_cast<double>(build_.nodes.size() - 1) / build_.stations_per_turn;
    return finish(build_.turns);
  }
  Build finish(double turns) {
    build_.turns = turns;
    build_.length_mm = FiberLine(build_).total();
    return build_;
  }

 private:
  void push(const Place& place) {
    build_.nodes.push(build_.nodes.x_grid().nearest(place.x), build_.nodes.r_grid().nearest(place.r), place.support,
                      place.rides_up);
  }

  Build build_;
};

// Straight turns that step to the next place in an instant, as in an ideal parallel-turn wind: `turns` per layer
// at this pitch, each layer nested in the one below and half a pitch to the side of it.
inline Build nested(const Plan& plan, int stations, int layers, int turns, double pitch) {
  const double d = plan.fiber().diameter_mm;
  const double rise = std::sqrt(d * d - 0.25 * pitch * pitch);
  const double r0 = 0.5 * (plan.spool().barrel_diameter_mm + d);
  BuildMaker maker(plan, stations);
  for (int layer = 0; layer < layers; ++layer) {
    const bool right = layer % 2 == 0;
    const double start = right ? 0.5 * d : 0.5 * d + 0.5 * pitch + (turns - 1) * pitch;
    maker.stroke(right ? 1 : -1, turns, [=](double turn) {
      const double step = std::floor(turn + 1e-9) * pitch;
      return Place{right ? start + step : start - step, r0 + layer * rise,
                   layer == 0 ? Support::barrel : Support::valley};
    });
  }
  return maker.finish(static_cast<double>(layers * turns));
}

// A helix on the bare barrel, from x0, this pitch and number of turns, to the right.
inline Build helix(const Plan& plan, int stations, double x0, double pitch, double turns) {
  const double r = 0.5 * (plan.spool().barrel_diameter_mm + plan.fiber().diameter_mm);
  return BuildMaker(plan, stations)
      .stroke(1, turns,
              [=](double turn) {
                return Place{x0 + pitch * turn, r, Support::barrel};
              })
      .finish();
}

inline Measurements measured(const Plan& plan, const Build& build) {
  Progress progress;
  return measure(plan, build, progress);
}

}  // namespace laywright::synthetic
