// Which strokes are whole: a diameter or the height of an edge can be compared with that of another wind only after one.
#pragma once

#include <cstddef>
#include <optional>

#include "lay/build.h"
#include "plan/lay_plan.h"

namespace laywright {

// True when the fiber of the stroke went on to the other flange: another stroke follows, or its end lies as near
// to the far side, within 1.5 of its mean pitch, as the stroke before began there (the first: as the flange).
[[nodiscard]] bool is_whole(const Plan& plan, const Build& build, std::size_t stroke);

// Index of the last such stroke: the last or the one before it. None where the wind ends within its first layer.
[[nodiscard]] std::optional<std::size_t> last_whole_stroke(const Plan& plan, const Build& build);

}  // namespace laywright
