// A calibrated dial as text: how well the readings lie on a line, and the table to paste.
#pragma once

#include <string>
#include <vector>

#include "plan/calibration.h"
#include "plan/fields.h"

namespace laywright {

struct CalibrationRequest {
  std::string dial;  // "pitch"
  std::vector<DialPoint> points;
  const Unit* unit = nullptr;  // in which the values were given; null for turns
  bool as_measured = false;    // the points themselves, in place of a line
  Dial given;                  // unit, law, step, diameter
};

// Precondition: the calibration is that of the points.
[[nodiscard]] std::string calibration_text(const CalibrationRequest& request, const Calibration& found);

}  // namespace laywright
