#include "answers/outcome_json.h"

#include <cmath>
#include <string>

#include "plan/plan_values.h"

namespace laywright {

using Json = nlohmann::ordered_json;

Json outcome_json(const Outcome& outcome) {
  Json document = Json::object();
  for (const OutcomeFigure& figure : outcome_figures()) {
    const double value = figure.get(outcome);
    document[std::string(figure.key)] = std::isfinite(value) ? Json(value) : Json(nullptr);
  }
  return document;
}

Json changes_json(const PlanDraft& draft, const std::vector<Change>& changes) {
  Json list = Json::array();
  for (const Change& change : changes) {
    const FieldInfo& field = *field_at(draft, change.path);
    const auto origin = draft.origins.find(change.path);
    const Unit* unit = unit_written(field, origin == draft.origins.end() ? "" : origin->second.written);
    // As exactly as anybody can set it.
    constexpr std::size_t digits = 6;
    const bool quantity = field.kind == FieldKind::quantity && unit != nullptr;
    list.push_back({{"key", change.path},
                    {"value", quantity ? format_quantity(change.value, *unit, digits)
                                       : write_value(field, change.value, unit)}});
  }
  return list;
}

}  // namespace laywright
