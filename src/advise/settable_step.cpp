#include "advise/settable_step.h"

#include <cmath>

#include "plan/dialling.h"

namespace laywright {

double settable_step(const PlanDraft& draft, std::string_view path, double step) {
  constexpr double round_off = 1e-9;
  const std::optional<double> on_dial = dial_step(draft, path);
  return on_dial ? *on_dial * std::ceil(step / *on_dial - round_off) : step;
}

}  // namespace laywright
