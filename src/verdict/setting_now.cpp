#include "verdict/setting_now.h"

#include <algorithm>

#include "plan/fields.h"

namespace laywright {
namespace {

double now(const Plan& plan, const Measurements& measurements, double at_first,
           std::optional<double> WindStep::*setting) {
  const auto layers = static_cast<int>(measurements.layers.size());
  double value = at_first;
  for (const WindStep& step : plan.wind().steps) {
    if (step.from_layer <= layers) value = (step.*setting).value_or(value);
  }
  return value;
}

}  // namespace

double pitch_now_mm(const Plan& plan, const Measurements& measurements) {
  return now(plan, measurements, plan.traverse().pitch_mm, &WindStep::pitch_mm);
}

double stop_now_mm(const Plan& plan, const Measurements& measurements, Side side) {
  return side == Side::left ? now(plan, measurements, plan.traverse().left_stop_mm, &WindStep::left_stop_mm)
                            : now(plan, measurements, plan.traverse().right_stop_mm, &WindStep::right_stop_mm);
}

std::string in_own_unit(const Plan& plan, std::string_view path, double value, std::optional<std::size_t> digits) {
  const auto& fields = plan_fields();
  const auto field =
      std::find_if(fields.begin(), fields.end(), [&](const auto& each) { return each.path() == path; });
  const auto origin = plan.draft().origins.find(std::string(path));
  const Unit* unit = unit_written(*field, origin == plan.draft().origins.end() ? "" : origin->second.written);
  if (unit == nullptr || !digits) return write_value(*field, value, unit);
  return format_quantity(value, *unit, *digits);
}

}  // namespace laywright
