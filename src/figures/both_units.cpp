#include "figures/both_units.h"

#include <cmath>
#include <utility>

#include "plan/fields.h"

namespace laywright {
namespace {

// The unit of the other system in which a person would say it.
const char* other_unit(std::string_view unit) {
  static constexpr std::pair<std::string_view, const char*> others[] = {{"mm", "in"},
                                                                        {"cm", "in"},
                                                                        {"m", "ft"},
                                                                        {"km", "ft"},
                                                                        {"um", "mil"},
                                                                        {"in", "mm"},
                                                                        {"ft", "m"},
                                                                        {"yd", "m"},
                                                                        {"mil", "um"},
                                                                        {"N", "lbf"},
                                                                        {"cN", "lbf"},
                                                                        {"gf", "lbf"},
                                                                        {"kgf", "lbf"},
                                                                        {"lbf", "N"},
                                                                        {"mm/s", "ft/min"},
                                                                        {"m/s", "ft/min"},
                                                                        {"m/min", "ft/min"},
                                                                        {"ft/min", "m/min"},
                                                                        {"kg", "lb"},
                                                                        {"g", "lb"},
                                                                        {"lb", "kg"},
                                                                        {"g/km", "lb/1000ft"},
                                                                        {"kg/km", "lb/1000ft"},
                                                                        {"lb/1000ft", "g/km"},
                                                                        {"N*m", "lbf*in"},
                                                                        {"mN*m", "lbf*in"},
                                                                        {"lbf*in", "N*m"},
                                                                        {"MPa", "psi"},
                                                                        {"GPa", "kpsi"},
                                                                        {"Pa", "psi"},
                                                                        {"psi", "MPa"},
                                                                        {"kpsi", "GPa"}};
  for (const auto& [own, other] : others) {
    if (unit == own) return other;
  }
  return nullptr;
}

}  // namespace

bool in_inches(const Plan& plan) {
  const auto origin = plan.draft().origins.find("spool.barrel_diameter");
  if (origin == plan.draft().origins.end()) return false;
  for (const auto& field : plan_fields()) {
    if (field.path() != origin->first) continue;
    const std::string_view unit = unit_written(field, origin->second.written)->name;
    return unit == "in" || unit == "ft" || unit == "yd" || unit == "mil";
  }
  return false;
}

BothWays both_ways(const Plan& plan, Amount amount, double value, int decimals) {
  const auto words = [&](bool inch) { return amount_text(amount, value, decimals, inch); };
  const bool inch = in_inches(plan);
  return {words(inch), words(!inch)};
}

BothWays setting_both_ways(const Plan& plan, std::string_view path) {
  for (const auto& field : plan_fields()) {
    if (field.path() != path) continue;
    const std::optional<double> value = field.get(plan.draft());
    if (!value) return {"not set", ""};
    const auto origin = plan.draft().origins.find(field.path());
    const Unit* unit =
        unit_written(field, origin == plan.draft().origins.end() ? std::string_view() : origin->second.written);
    const BothWays own{format_quantity(*value, *unit, 8), ""};
    const char* other_name = other_unit(unit->name);
    if (other_name == nullptr) return own;
    const Unit& other = *find_unit(other_name);
    const double one =
        std::pow(10.0, other.exponent) * static_cast<double>(other.multiplier) / static_cast<double>(other.divisor);
    return {own.own, format_quantity(*value, other, std::abs(*value) < one ? 4 : 5)};
  }
  return {};
}

}  // namespace laywright
