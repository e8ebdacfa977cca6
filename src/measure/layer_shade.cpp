#include "measure/layer_shade.h"

#include <algorithm>

#include "base/colour_code.h"
#include "base/round_figure.h"
#include "base/viridis.h"

namespace laywright {

std::uint32_t layer_code(std::size_t layer, std::size_t layers) {
  constexpr double darkest = 0.18, lightest = 0.76, darker = 0.18;
  constexpr std::uint32_t black = 0x000000;
  const double share = layers > 1 ? static_cast<double>(layer - 1) / static_cast<double>(layers - 1) : 1.0;
  const std::uint32_t code = viridis_code(darkest + (lightest - darkest) * share);
  return (layers - layer) % 2 == 0 ? code : code_between(code, black, darker);
}

int layers_to_a_number(double layer_height, double wanted) {
  constexpr double least = 1e-4;  // of a number's height: beyond, no wind has so many layers
  return static_cast<int>(std::max(1.0, round_figure_above(wanted / std::max(layer_height, least * wanted))));
}

}  // namespace laywright
