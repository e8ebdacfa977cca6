// Where the turns of a layer cross those of the layer below, and the lines on which these places stand.
#pragma once

#include <cstddef>
#include <vector>

#include "lay/build.h"

namespace laywright {

// Nodes of a stroke at which it has passed a turn of the stroke before (measure/strand_cursor.h), in their order. None
// for the first stroke. Precondition: end is at most the end of the stroke; nodes from there on are not looked at.
[[nodiscard]] std::vector<std::size_t> crossings_of(const Build& build, std::size_t stroke, std::size_t end);

// The same, in chains: from turn to turn a crossing moves on by less than a twelfth of a turn, or a new chain begins.
using CrossingLines = std::vector<std::vector<std::size_t>>;
[[nodiscard]] CrossingLines crossing_lines(const Build& build, const std::vector<std::size_t>& crossings);

}  // namespace laywright
