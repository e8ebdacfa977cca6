// Settings near those of a crossed wind that lay it in a close pattern.
#pragma once

#include <vector>

#include "pattern/pattern.h"

namespace laywright {

// Machines are set, and plans written, in steps of this size.
inline constexpr double setting_step_mm = 0.001;

struct SafeSetting {
  enum class What { pitch, right_stop };
  What what = What::pitch;
  double value_mm = 0.0, instead_of_mm = 0.0;
  Pattern pattern;  // with that value as it stands here, rounded
};

// The next pitch below and above, and the next right stop to either side at the same pitch, each where the displacement
// is one fiber and `gap_d`. Rounded to `setting_step_mm`, outward where that keeps it a close pattern; one that does not
// stay a close pattern when it is rounded is left out: a fine fiber after many turns asks for more than such a step.
// Solved from  b n - a = +- delta / p,  delta = (1 + gap) d / cos(angle):  p = (2 b (stroke + lost motion) -+ delta) /
// (a - 2 b standing turns), or a stroke longer by  (+- delta - p (b n - a)) / (2 b)  (derived).
// Empty for a close wind. Precondition: a sound, continuous traverse; `diameter_mm` of the centre line.
[[nodiscard]] std::vector<SafeSetting> safe_settings(const Spool& spool, const Traverse& traverse, double d_mm,
                                                     double diameter_mm, double gap_d);

}  // namespace laywright
