// How layers are told apart wherever they are drawn: in pictures, cuts, drawings and models.
#pragma once

#include <cstddef>
#include <cstdint>

namespace laywright {

// Of a layer of so many, 1 on the barrel, 0xrrggbb: viridis without its lime and yellow, the deeper, the darker. Every other
// one is a little darker still, so that neighbours are told apart in a wind of many.
[[nodiscard]] std::uint32_t layer_code(std::size_t layer, std::size_t layers);

// So many layers to a number that is written on a cut, where one layer is so high and a number needs so much, both of one unit:
// 1, 2, 5, 10 and so on.
[[nodiscard]] int layers_to_a_number(double layer_height, double wanted);

}  // namespace laywright
