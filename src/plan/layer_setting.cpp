#include "plan/layer_setting.h"

namespace laywright {

void apply(const WindStep& step, Traverse& traverse) {
  traverse.pitch_mm = step.pitch_mm.value_or(traverse.pitch_mm);
  traverse.left_stop_mm = step.left_stop_mm.value_or(traverse.left_stop_mm);
  traverse.right_stop_mm = step.right_stop_mm.value_or(traverse.right_stop_mm);
}

Traverse traverse_in_layer(const Plan& plan, int layer) {
  Traverse traverse = plan.traverse();
  for (const WindStep& step : plan.wind().steps) {
    if (step.from_layer <= layer) apply(step, traverse);
  }
  return traverse;
}

}  // namespace laywright
