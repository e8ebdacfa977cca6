#include "plan/revision.h"

#include <cstdint>

#include <fmt/format.h>

#include "base/hash.h"
#include "plan/dial_text.h"
#include "plan/fields.h"

namespace laywright {
namespace {

// A usual value adds nothing, so that a key that is added to the plan's format later leaves older plans their revision. Values
// that are written in other units differ in their last bits: what counts is nine digits.
template <class Owner>
void add_fields(Hash& hash, const std::vector<Field<Owner>>& fields, const Owner& owner) {
  for (const Field<Owner>& field : fields) {
    if (is_look(field)) continue;
    const std::optional<double> value = field.get(owner);
    if (!value || value == field.get(Owner{})) continue;
    const std::string text = fmt::format("{}={:.9g};", field.path(), *value == 0.0 ? 0.0 : *value);
    hash.add(text.data(), text.size());
  }
}

}  // namespace

std::string revision_of(const PlanDraft& draft) {
  Hash hash;
  add_fields(hash, plan_fields(), draft);
  for (const WindStep& step : draft.wind.steps) {
    hash.add(static_cast<std::uint64_t>(step.from_layer));
    add_fields(hash, step_fields(), step);
  }
  for (const DialLines& each : lines_of(draft.machine)) {
    for (const auto& [key, written] : each.keys) {
      const std::string text = fmt::format("{}.{}={};", each.table, key, written);
      hash.add(text.data(), text.size());
    }
  }
  const std::uint64_t value = hash.value() ^ (hash.value() >> 32U);
  return fmt::format("{:04X}-{:04X}", (value >> 16U) & 0xFFFFU, value & 0xFFFFU);
}

}  // namespace laywright
