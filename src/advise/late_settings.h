// Tension and side of the start: settings of a machine that decide less than the traverse does, and are turned only where the
// traverse leaves something, or where the pull itself is not good.
//
// How the fiber lies depends on the tension only where it rolls (lay/torsion.h): the harder the pull, the less its twist holds it
// up. The side of the start only mirrors a wind whose spool and stops are alike on both sides.
#pragma once

#include <optional>
#include <vector>

#include "advise/searchable_setting.h"
#include "plan/lay_plan.h"
#include "verdict/verdict.h"

namespace laywright {

// Between which tensions of winding all that grows with it keeps its limit, with the margin of what is good (verdict/weigh.h):
// the fiber's greatest tension by limits.pull, the least pull that lays it down, the clutch's current. Where nothing says what the
// fiber bears, no more than now; and never further than fourfold from where it stands, or from where it is good.
struct TensionRoom {
  double low_N = 0.0, high_N = 0.0;

  [[nodiscard]] bool has(double tension_N) const { return tension_N >= low_N && tension_N <= high_N; }
};

// `pull`: the checks of the plan's own wind that depend on tension (weigh.h). None without wind.tension, and where no tension would
// be good.
[[nodiscard]] std::optional<TensionRoom> tension_room(const PlanDraft& draft, const std::vector<Check>& pull);

// Whether the fiber would lie in another way. Precondition: the draft is sound.
[[nodiscard]] bool tension_turns_lay(const PlanDraft& draft);
[[nodiscard]] bool start_turns_lay(const PlanDraft& draft);

inline constexpr const char* tension_path = "wind.tension";
inline constexpr const char* start_path = "traverse.start";

// The side of the start where it matters, and the tension where the plan has one: marked as late. The tension's range is still
// empty: it is known when the plan has been laid.
void add_late_settings(const PlanDraft& draft, std::vector<SearchableSetting>& searchables);

// The tension among them; null where there is none, or where a person has given it a range and it is searched like all others.
[[nodiscard]] SearchableSetting* late_tension(std::vector<SearchableSetting>& searchables);

// Where a late setting is tried, beside where it stands: the other side; the ends of the room and half the way there.
[[nodiscard]] std::vector<double> late_positions(const SearchableSetting& searchable, double now);

}  // namespace laywright
