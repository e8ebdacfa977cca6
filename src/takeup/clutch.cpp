// What current the clutch takes over the wind, and where that is not known.
#include <fmt/format.h>

#include "plan/dialling.h"
#include "takeup/parts.h"

namespace laywright {
namespace {

// The torque of a magnetic-particle clutch goes as its current, whatever its slip (machinedesign.com, 2017).
std::vector<double> by_full_current(const Takeup& takeup, const MachineCurves& curves) {
  std::vector<double> currents;
  if (!takeup.torque_at_full_current_Nmm || !takeup.full_current_A) return currents;
  for (const double torque : curves.torque_Nmm)
    currents.push_back(*takeup.full_current_A * torque / *takeup.torque_at_full_current_Nmm);
  return currents;
}

}  // namespace

const Dial* measured_clutch(const Plan& plan) {
  const auto& dials = plan.draft().machine.dials;
  const auto found = dials.find("tension");
  return found != dials.end() && found->second.diameter_mm && found->second.unit == "A" ? &found->second : nullptr;
}

std::vector<double> pulls_on_clutch(const Plan& plan, const Dial& clutch, const MachineCurves& curves) {
  std::vector<double> pulls;
  // On the empty barrel what is dialled there: a mean radius of its first turn would be off in the last digits.
  const double start = *plan.wind().tension_N * pull_on_dial(plan.draft(), clutch);
  for (const double torque : curves.torque_Nmm) pulls.push_back(start * torque / curves.torque_Nmm.front());
  return pulls;
}

std::vector<double> clutch_currents(const Plan& plan, const MachineCurves& curves) {
  if (curves.torque_Nmm.empty()) return {};
  const Dial* clutch = measured_clutch(plan);
  if (clutch == nullptr) return by_full_current(*plan.takeup(), curves);
  std::vector<double> currents;
  for (const double pull : pulls_on_clutch(plan, *clutch, curves)) {
    const std::optional<double> current = reading_at_value(*clutch, pull);
    if (!current) return {};
    currents.push_back(*current);
  }
  return currents;
}

}  // namespace laywright
