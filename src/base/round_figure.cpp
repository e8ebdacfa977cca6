#include "base/round_figure.h"

#include <cmath>
#include <initializer_list>

namespace laywright {

double round_figure_below(double value) {
  const double power = std::pow(10.0, std::floor(std::log10(value)));
  for (const double times : {5.0, 2.0}) {
    if (value >= times * power) return times * power;
  }
  return power;
}

}  // namespace laywright
