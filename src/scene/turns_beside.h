// The turns of one stroke beside a place at a station: the nearest ones to its left and right.
#pragma once

#include <cstddef>
#include <optional>

#include "scene/scene_source.h"

namespace laywright {

struct TurnsBeside {
  std::optional<std::size_t> left, right;  // nodes; left: x at most the place's
};

// Of the turns of a stroke at the node's station, without the node itself. Sought from the turn that is nearest in x
// when one walks from a first guess, up to four turns either way: a stroke goes along x but for a few leaps.
[[nodiscard]] TurnsBeside turns_beside(const SceneSource& source, std::size_t node, std::size_t stroke);

}  // namespace laywright
