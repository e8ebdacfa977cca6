#include "measure/grade.h"

namespace laywright {

const char* name_of(Grade grade) {
  switch (grade) {
    case Grade::good: return "good";
    case Grade::marginal: return "marginal";
    case Grade::do_not_wind: return "do not wind";
  }
  return "";
}

Grade grade_at_most(double value, double limit, Grade at_worst) {
  if (value > (1.0 + uncertain_share) * limit) return at_worst;
  return value > (1.0 - uncertain_share) * limit ? Grade::marginal : Grade::good;
}

}  // namespace laywright
