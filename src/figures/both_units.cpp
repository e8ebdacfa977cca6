#include "figures/both_units.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/inch.h"
#include "figures/figures.h"
#include "plan/fields.h"

namespace laywright {
namespace {

struct Pair {
  const char* metric;
  const char* inch;
  double inch_per_metric;  // exact by the yard and pound of 1959 and standard gravity
};

Pair pair_of(Amount amount) {
  switch (amount) {
    case Amount::small_length: return {"mm", "in", 1.0 / mm_per_inch};
    case Amount::fiber_length: return {"m", "ft", 1.0 / m_per_foot};
    case Amount::force: return {"N", "lbf", 1.0 / newtons_per_pound_force};
    case Amount::torque: return {"N m", "lbf in", 1000.0 / (newtons_per_pound_force * mm_per_inch)};
    case Amount::guide_speed: return {"mm/s", "in/s", 1.0 / mm_per_inch};
    case Amount::line_speed: return {"m/min", "ft/min", 1.0 / m_per_foot};
    case Amount::pressure: return {"MPa", "psi", mm_per_inch * mm_per_inch / newtons_per_pound_force};
    case Amount::mass: return {"kg", "lb", 1.0 / kg_per_pound};
    case Amount::inertia:
      return {"kg cm\u00B2", "lb in\u00B2", 1e-4 / (kg_per_pound * 1e-6 * mm_per_inch * mm_per_inch)};
  }
  return {"", "", 1.0};
}

// As fine in the other unit as the metric figure is: a unit that is smaller has fewer decimals.
int decimals_of(const Pair& pair, int metric_decimals) {
  const int shift = static_cast<int>(std::ceil(-std::log10(pair.inch_per_metric) - 1e-9));
  return std::clamp(metric_decimals + shift, 0, 8);
}

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

double value_in(Amount amount, double value, bool inch) {
  return inch ? value * pair_of(amount).inch_per_metric : value;
}

const char* unit_in(Amount amount, bool inch) { return inch ? pair_of(amount).inch : pair_of(amount).metric; }

std::string figure_in(Amount amount, double value, int decimals, bool inch) {
  return figure(value_in(amount, value, inch), inch ? decimals_of(pair_of(amount), decimals) : decimals);
}

BothWays both_ways(const Plan& plan, Amount amount, double value, int decimals) {
  const auto words = [&](bool inch) {
    return fmt::format("{} {}", figure_in(amount, value, decimals, inch), unit_in(amount, inch));
  };
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
