#include "verdict/own_unit.h"

#include <algorithm>

#include "base/round_figure.h"
#include "plan/fields.h"

namespace laywright {

std::string in_own_unit(const Plan& plan, std::string_view path, double value, std::optional<std::size_t> digits) {
  const auto& fields = plan_fields();
  const auto field =
      std::find_if(fields.begin(), fields.end(), [&](const auto& each) { return each.path() == path; });
  const auto origin = plan.draft().origins.find(std::string(path));
  const Unit* unit = unit_written(*field, origin == plan.draft().origins.end() ? "" : origin->second.written);
  // As it was written; the stops of a draw are a hundredth of a fiber off, a sum.
  if (unit == nullptr || !digits) return write_value(*field, without_noise(value), unit);
  return format_quantity(value, *unit, *digits);
}

}  // namespace laywright
