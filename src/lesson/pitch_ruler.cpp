#include "lesson/pitch_ruler.h"

#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "plan/guide_cycle.h"

namespace laywright {

PitchRuler ruler_of(const Plan& plan) {
  const GuideCycle cycle = guide_cycle(plan.spool(), plan.traverse());
  PitchRuler ruler;
  ruler.fiber_mm = plan.fiber().diameter_mm;
  ruler.pitch_mm = cycle.pitch_mm;
  ruler.travel_mm = cycle.stroke_mm;
  // A way of whole turns is not short of one by rounding.
  constexpr double rounding = 1e-9;
  ruler.turns = static_cast<int>(std::floor(ruler.travel_mm / ruler.pitch_mm + rounding));
  ruler.need_mm = ruler.turns * ruler.fiber_mm;
  return ruler;
}

std::string ruler_words(const PitchRuler& ruler, bool inch) {
  const auto length = [&](double mm) { return amount_text(Amount::small_length, mm, 1, inch); };
  const double spare = ruler.spare_mm();
  return fmt::format("In one layer {} turns need {}, the guide gives them {}: {} {}.", ruler.turns,
                     length(ruler.need_mm), length(ruler.turns * ruler.pitch_mm), length(std::abs(spare)),
                     spare < 0.0 ? "too little" : "to spare");
}

}  // namespace laywright
