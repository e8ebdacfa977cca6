#include "lay/lag.h"

#include "lay/same_everywhere.h"

namespace laywright {

Lagged lagged_behind(double x, const GuidePiece& guide, double radius, double free_length) {
  if (free_length <= 0.0) return {guide.end(), 0.0};
  // In units of angle: dx/dt = (x_g - x) / lag with lag = L / R. For x_g = a + b t + c t^2 a particular solution
  // is a + b (t - lag) + c (t^2 - 2 lag t + 2 lag^2); the rest decays.
  const double lag = free_length / radius;
  const double behind = lag * (guide.slope - 2.0 * lag * guide.bend);
  const double stays = exp_minus(guide.angle / lag);
  return {guide.end() - behind - 2.0 * lag * guide.bend * guide.angle + (x - guide.start + behind) * stays, stays};
}

}  // namespace laywright
