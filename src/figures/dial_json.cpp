#include "figures/dial_json.h"

#include "figures/json_number.h"
#include "figures/takeup_json.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

// In which the program computes.
std::string_view unit_inside(const FieldInfo& field) {
  if (field.kind != FieldKind::quantity) return "turns";
  for (const Unit* unit : units_of(field.dimension)) {
    if (unit->multiplier == unit->divisor && unit->exponent == 0) return unit->name;
  }
  return field.usual_unit;
}

// Values are in the same units as all else of the document: `unit` names them.
Json dialled_json(const PlanDraft& draft, const DialledSetting& each) {
  const FieldInfo& field = *field_at(draft, each.path);
  return {{"key", each.path},           {"asked", number(each.asked)},     {"laid", number(each.laid)},
          {"unit", unit_inside(field)}, {"reading", number(each.reading)}, {"reading_unit", each.unit},
          {"rounded", each.moved()}};
}

}  // namespace

Json dialled_block(const Plan& plan) {
  if (plan.draft().machine.empty()) return nullptr;
  Json settings = Json::array();
  for (const DialledSetting& each : plan.dialled()) settings.push_back(dialled_json(plan.draft(), each));
  return settings;
}

}  // namespace laywright
