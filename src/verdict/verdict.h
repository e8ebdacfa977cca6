// The verdict: is this wind good, and if not, what decides, and what to set first?
//
// Every figure that is weighed is held against a limit: of the plan's [limits] or the usual one (measure/acceptance.h), and for
// the machine against what fiber, spool and take-up bear. The verdict is the worst of these grades. Of several as bad the one
// decides that comes first of: what the spool and the fiber must not suffer (firm), the ribbon of a crossed wind, and else the
// one that is over its limit by most.
//
// Firm figures hardly differ from one draw to the next: over the limit is "do not wind", and "marginal" is to be within it by less
// than 5 % (of the rim: by less than 2 d, as much as the highest fiber of two draws may differ). All others: grade.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "lay/build.h"
#include "measure/grade.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"

namespace laywright {

enum class Weighed : std::uint8_t {
  planned_end,  // share of the plan's length or turns that was wound before the rim was reached
  rim_clearance,
  greatest_pull,
  least_pull,
  bend,
  spool_speed,
  clutch_current,
  ribbon,
  ridge,
  valley,
  unevenness,
  open_gaps,
  flange_gap,
  dropped_turns,
  drop_depth,
  ride_ups,
  payoff_force,  // that draws the fiber off the side, in times the tension of winding
};

struct Check {
  Weighed what = Weighed::ridge;
  std::optional<Side> side;  // the flange it is of
  double value = 0.0, limit = 0.0;
  bool at_least = false;  // the limit is a least one
  double margin = 0.0;    // to the limit, in the same unit; negative where the figure is beyond it
  Grade grade = Grade::good;

  [[nodiscard]] bool beyond() const { return margin < 0.0; }
};

// One of several winds of a plan.
struct DrawSeen {
  std::uint64_t seed = 0;
  double fiber_diameter_mm = 0.0;
  Grade grade = Grade::good;
  std::string decides;  // "valley, right flange": when good, what is nearest to its limit
};

struct WindVerdict {
  Grade grade = Grade::good;
  std::string reason;                // a sentence without its stop: what decides, or what is nearest to its limit
  std::optional<std::string> first;  // the first thing to set, as an instruction without its stop; none when good
  std::vector<Check> checks;         // in the order of Weighed, the left side first
  std::size_t deciding = 0;          // of `checks`; when good, the one nearest to its limit
  // This build first. With them, grade, reason and what to set first are those of the worst of them, and what was weighed are
  // still this build's figures. Empty: of this build alone.
  std::vector<DrawSeen> draws;
  bool long_wind = false;  // has more than `certain_layers`, which are to lie turn beside turn
};

// With more layers than these, how much order is left depends on the number of stations as well, and what is weighed of it
// with it: of 25 km in 124 layers 34 to 820 turns ride up per km at the model's number, 89 to 341 at twice as many, of 20
// layers alike (tests/results.md, long winds).
inline constexpr std::size_t certain_layers = 40;

// Winds by which one plan is judged where a verdict over draws is asked for, or due.
inline constexpr int usual_draws = 5;

// Whether winds of the plan differ by what it states: a tolerance of the fiber, or what scatters.
[[nodiscard]] bool states_scatter(const PlanDraft& draft);
// By how many winds a plan is judged where nobody says: one says little where the plan states scatter.
[[nodiscard]] inline int due_draws(const PlanDraft& draft) { return states_scatter(draft) ? usual_draws : 1; }

// Without a `run` the machine's figures are not weighed. Precondition: all belong to the plan, complete.
[[nodiscard]] WindVerdict verdict_of(const Plan& plan, const Build& build, const Measurements& measurements,
                                     const TakeupRun* run);

}  // namespace laywright
