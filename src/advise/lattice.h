// Points that fill a box evenly: a Sobol sequence, shifted by a random vector (Cranley and Patterson 1976), so that
// each seed gives another set.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace laywright {

// `count` points of `dimensions` coordinates in [0, 1). Precondition: 1 to 50 dimensions.
[[nodiscard]] std::vector<std::vector<double>> lattice(std::size_t count, std::size_t dimensions,
                                                       std::uint64_t seed);

}  // namespace laywright
