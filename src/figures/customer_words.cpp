#include "figures/customer_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity.h"
#include "base/quantity_text.h"
#include "base/readable.h"
#include "base/units.h"
#include "figures/both_units.h"
#include "figures/figures.h"
#include "measure/fiber_look.h"
#include "plan/fields.h"

namespace laywright {
namespace {

// The thickest that a fiber of its own is made, with a tight buffer; what is thicker has several parts (common practice, no
// source).
constexpr double thickest_fiber_mm = 0.9;

// As the plan wrote this value; null where it did not.
const Unit* written_unit(const Plan& plan, std::string_view path) {
  const auto origin = plan.draft().origins.find(std::string(path));
  if (origin == plan.draft().origins.end()) return nullptr;
  for (const auto& field : plan_fields())
    if (field.path() == path) return unit_written(field, origin->second.written);
  return nullptr;
}

double mm_per(const Unit& unit) {
  return std::pow(10.0, unit.exponent) * static_cast<double>(unit.multiplier) / static_cast<double>(unit.divisor);
}

enum class Rounded { nearest, down, up };

// A unit, and to how many of its decimals; below 0 to tens, hundreds.
struct Scale {
  const Unit& unit;
  int decimals;

  [[nodiscard]] std::string number(double mm, Rounded way = Rounded::nearest) const {
    const double step = std::pow(10.0, -decimals), value = mm / mm_per(unit);
    constexpr double noise = 1e-9;  // of a quotient that should be whole
    const double steps = value / step;
    const double whole = way == Rounded::down ? std::floor(steps + noise)
                         : way == Rounded::up ? std::ceil(steps - noise)
                                              : std::round(steps);
    std::string text = figure(whole * step, std::max(0, decimals));
    if (decimals <= 0) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
  }
  [[nodiscard]] std::string operator()(double mm) const { return fmt::format("{} {}", number(mm), unit.name); }
  // "6.9 to 8.4 km", rounded outward.
  [[nodiscard]] std::string between(const Span& span) const {
    return fmt::format("{} to {} {}", number(span.least_mm, Rounded::down), number(span.most_mm, Rounded::up),
                       unit.name);
  }
};

// Of fiber, in so many digits that count; `coarse`: no more than these even of whole metres.
Scale length_scale(const Plan& plan, double mm, int digits, bool coarse) {
  const Unit* unit = written_unit(plan, "wind.length");
  const std::string_view name = unit == nullptr ? "" : unit->name;
  if (name != "ft" && name != "yd") {
    const bool inch = unit == nullptr ? in_inches(plan) : name == "in" || name == "mil";
    unit = find_unit(inch ? "ft" : mm >= mm_per_km ? "km" : "m");
  }
  const double size = mm / mm_per(*unit);
  const int decimals = size > 0.0 ? digits - 1 - static_cast<int>(std::floor(std::log10(size))) : 0;
  return {*unit, coarse ? decimals : std::max(0, decimals)};
}

// To a tenth of a millimetre, or a hundredth where the spool is small.
Scale diameter_scale(const Plan& plan) {
  const Unit* unit = written_unit(plan, "spool.flange_diameter");
  if (unit == nullptr || unit->name == "um" || unit->name == "mil") unit = find_unit(in_inches(plan) ? "in" : "mm");
  constexpr double small_mm = 20.0;
  const double fine_mm = plan.spool().flange_diameter_mm < small_mm ? 0.01 : 0.1;
  return {*unit, std::max(0, static_cast<int>(std::ceil(std::log10(mm_per(*unit) / fine_mm) - 1e-9)))};
}

// "7.62 km" of the capacity; "1.04 km" of what is wound, finer, since it was asked for.
Scale capacity_scale(const Plan& plan, double mm) { return length_scale(plan, mm, 3, true); }
Scale wound_scale(const Plan& plan, double mm) { return length_scale(plan, mm, 4, false); }

std::string below_rim(const Scale& scale, double clearance_mm) {
  const std::string away = scale(std::abs(clearance_mm));
  if (away == scale(0.0)) return "level with the rim";
  return fmt::format("{} {} the rim", away, clearance_mm > 0.0 ? "below" : "above");
}

std::string holds_sentence(const Plan& plan, const CustomerFigures& figures, const std::string& ware) {
  const double clearance = plan.limits().rim_clearance_mm;
  return fmt::format(
      "Your spool holds {} of {}{}.", capacity_scale(plan, figures.capacity.value_mm)(figures.capacity.value_mm),
      full_ware_of(plan, ware), clearance > 0.0 ? ", up to " + below_rim(diameter_scale(plan), clearance) : "");
}

std::string sure_sentence(const Plan& plan, const CustomerFigures& figures, const std::string& ware) {
  const std::string margin = fmt::format("{} % of the length for what the model does not know",
                                         short_figure(100.0 * figures.model_margin, 2));
  std::string counted;
  if (figures.tolerance_mm > 0.0)
    counted = fmt::format("the tolerance of the {}, {} either way, ", ware_of(plan, ware),
                          setting_both_ways(plan, "fiber.diameter_tolerance").own);
  if (figures.scatters) counted += "the machine's scatter as the plan states it, ";
  if (!counted.empty()) counted.replace(counted.size() - 2, 2, " and ");
  return fmt::format(
      "Computed from a model of each turn, not measured. Counting {}{}, the spool holds {} and with what is wound "
      "is {} "
      "thick. {}",
      counted, margin, capacity_scale(plan, figures.capacity.value_mm).between(figures.capacity),
      diameter_scale(plan).between(figures.diameter),
      counted.empty() ? "No tolerance was stated, so none is counted. These are estimates."
                      : "These are estimates.");
}

}  // namespace

LaidFigures laid_figures(const Build& build, const Measurements& measurements) {
  return {build.length_mm, measurements.outer_diameter.greatest_mm, measurements.rim_clearance_mm};
}

std::string ware_of(const Plan& plan, const std::string& own) {
  if (!own.empty()) return visible(own);
  switch (look_of(plan)) {
    case FiberLook::copper:
    case FiberLook::enamelled:
    case FiberLook::steel: return "wire";
    case FiberLook::yarn: return "yarn";
    case FiberLook::glass: return "fiber";
    case FiberLook::usual:
    case FiberLook::coated: break;
  }
  return plan.fiber().diameter_mm > thickest_fiber_mm ? "cable" : "fiber";
}

std::string full_ware_of(const Plan& plan, const std::string& own) {
  const std::string ware = ware_of(plan, own);
  if (!own.empty() || ware == "cable") return ware;
  switch (look_of(plan)) {
    case FiberLook::copper: return "copper wire";
    case FiberLook::enamelled: return "enamelled wire";
    case FiberLook::steel: return "steel wire";
    case FiberLook::glass: return "bare glass fiber";
    case FiberLook::usual:
    case FiberLook::coated: return "coated fiber";
    case FiberLook::yarn: break;
  }
  return ware;
}

std::string wound_sentence(const Plan& plan, const LaidFigures& wound) {
  const Scale diameter = diameter_scale(plan);
  const std::string length = wound_scale(plan, wound.length_mm)(wound.length_mm);
  std::string text = fmt::format("With {} it is {} thick, {}.", length, diameter(wound.diameter_mm),
                                 below_rim(diameter, wound.clearance_mm));
  const std::optional<double> asked = plan.wind().length_mm;
  // What is left out by rounding is not missing.
  if (asked && wound_scale(plan, *asked)(*asked) != length && *asked > wound.length_mm)
    text += fmt::format(" The {} asked for do not fit.", wound_scale(plan, *asked)(*asked));
  return text;
}

CustomerSummary customer_summary(const Plan& plan, const CustomerFigures& figures, const std::string& ware) {
  const Scale diameter = diameter_scale(plan), capacity = capacity_scale(plan, figures.capacity.value_mm);
  const std::string word = ware_of(plan, ware);
  CustomerSummary summary{
      holds_sentence(plan, figures, ware),
      wound_sentence(plan, figures.wound),
      sure_sentence(plan, figures, ware),
      fmt::format("The {}'s end is under tension: hold it when you open it, it can spring back.", word),
      {}};
  summary.rows = {{"The spool holds",
                   fmt::format("{} ({})", capacity(figures.capacity.value_mm), capacity.between(figures.capacity))},
                  {"Wound on it", wound_scale(plan, figures.wound.length_mm)(figures.wound.length_mm)},
                  {"Diameter with it",
                   fmt::format("{} ({})", diameter(figures.diameter.value_mm), diameter.between(figures.diameter))},
                  {"Outermost " + word, below_rim(diameter, figures.wound.clearance_mm)},
                  {"Diameter of the " + word, setting_both_ways(plan, "fiber.diameter").own}};
  if (figures.mass_kg)
    summary.rows.push_back({"Weight of the " + word, both_ways(plan, Amount::mass, *figures.mass_kg, 3).own});
  summary.rows.push_back({"Flange diameter", setting_both_ways(plan, "spool.flange_diameter").own});
  summary.rows.push_back({"Barrel diameter", setting_both_ways(plan, "spool.barrel_diameter").own});
  summary.rows.push_back({"Width between the flanges", setting_both_ways(plan, "spool.inside_width").own});
  return summary;
}

}  // namespace laywright
