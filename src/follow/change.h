// What to set now, so that the rest of a wind comes out as it was planned.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advise/fit.h"
#include "lay/midwind_change.h"

namespace laywright {

// A setting to be changed at the machine.
struct NowSet {
  std::string path;                      // "traverse.right_stop"
  std::string words;                     // "right stop"
  double from = 0.0;                     // as it is set in this layer
  double to = 0.0;                       // what can be set, where the machine has a dial for it
  std::string from_reading, to_reading;  // of the dial, "12.5 div"; empty without one
};

struct NowChange {
  std::vector<NowSet> settings;
  MidwindChange of_wind;  // the same for the lay model; `from_turn` is left at 0
};

// Settings for the current layer, each further by so much as the fit would set the next spool otherwise (Fit::corrections), and
// rounded to the dials of the machine; what these cannot move is left out. `shift_mm`: both stops further inward, beside that.
[[nodiscard]] NowChange change_of(const Plan& plan, const Fit& fit, int layer, double shift_mm = 0.0);

// That the guide stands longer at its reversals than planned, and no setting takes that back: the plan has no dwell to be made
// shorter.
[[nodiscard]] bool stands_too_long(const Fit& fit);

}  // namespace laywright
