// Points that fill a box evenly: a Sobol sequence, shifted by a random vector (Cranley and Patterson 1976), so that
// each seed gives another set.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "base/progress.h"

namespace laywright {

// `count` points of `dimensions` coordinates in [0, 1); none when `progress` is cancelled meanwhile. Precondition: 1 to 50
// dimensions.
[[nodiscard]] std::vector<std::vector<double>> lattice(std::size_t count, std::size_t dimensions, std::uint64_t seed,
                                                       const Progress* progress = nullptr);

}  // namespace laywright
