#include "desk/field_steps.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <string_view>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/spelling.h"
#include "base/units.h"

namespace laywright {
namespace {

enum class By { itself, fixed, fiber };

struct StepRule {
  std::string_view path;
  By by;
  double size;  // fixed: in the unit used inside; fiber: in fiber diameters
};

// Sizes that a person would try next; what has no rule goes by its own size.
constexpr std::array rules{
    StepRule{"spool.barrel_diameter", By::fixed, 1.0},
    StepRule{"spool.flange_diameter", By::fixed, 1.0},
    StepRule{"spool.inside_width", By::fixed, 1.0},
    StepRule{"spool.flange_taper", By::fixed, 0.5 * rad_per_deg},
    StepRule{"spool.barrel_taper", By::fixed, 0.1},
    StepRule{"spool.flange_runout", By::fixed, 0.05},
    StepRule{"fiber.diameter", By::fiber, 0.02},
    StepRule{"fiber.diameter_tolerance", By::fiber, 0.01},
    StepRule{"fiber.diameter_scatter", By::fiber, 0.002},
    StepRule{"fiber.friction", By::fixed, 0.05},
    StepRule{"fiber.core_diameter", By::fiber, 0.02},
    StepRule{"fiber.min_bend_diameter", By::fixed, 1.0},
    StepRule{"traverse.pitch", By::fiber, 0.02},
    StepRule{"traverse.left_stop", By::fiber, 0.1},
    StepRule{"traverse.right_stop", By::fiber, 0.1},
    StepRule{"traverse.free_length", By::fixed, 10.0},
    StepRule{"traverse.step_angle", By::fixed, 5.0 * rad_per_deg},
    StepRule{"traverse.guide_play", By::fiber, 0.1},
    StepRule{"traverse.pitch_scatter", By::fixed, 0.001},
    StepRule{"traverse.reversal.turns", By::fixed, 0.1},
    StepRule{"traverse.reversal.lost_motion", By::fiber, 0.1},
    StepRule{"traverse.reversal.stop_scatter", By::fiber, 0.02},
    StepRule{"wind.diameter", By::fixed, 1.0},
    StepRule{"wind.step.from_layer", By::fixed, 1.0},
    StepRule{"wind.step.pitch", By::fiber, 0.02},
    StepRule{"wind.step.left_stop", By::fiber, 0.1},
    StepRule{"wind.step.right_stop", By::fiber, 0.1},
    StepRule{"takeup.taper", By::fixed, 0.05},
    StepRule{"takeup.reaction_time", By::fixed, 0.1},
    StepRule{"limits.gap", By::fixed, 0.05},
    StepRule{"limits.pile_up", By::fixed, 0.05},
    StepRule{"limits.rim_clearance", By::fixed, 0.5},
    StepRule{"limits.valley", By::fixed, 0.05},
    StepRule{"limits.unevenness", By::fixed, 0.05},
    StepRule{"limits.open_gaps", By::fixed, 0.005},
    StepRule{"limits.flange_gap", By::fixed, 0.05},
    StepRule{"limits.dropped_turns", By::fixed, 10.0},
    StepRule{"limits.drop_depth", By::fixed, 0.1},
    StepRule{"limits.ride_ups", By::fixed, 10.0},
    StepRule{"limits.ribbon", By::fixed, 0.05},
    StepRule{"limits.payoff_force", By::fixed, 0.1},
    StepRule{"limits.pull", By::fixed, 0.05},
};

double in_unit(double inside, const Unit* unit) {
  return unit == nullptr ? inside
                         : inside * static_cast<double>(unit->divisor) / static_cast<double>(unit->multiplier) /
                               std::pow(10.0, unit->exponent);
}

// The nearest of 1, 2 and 5 times a power of ten.
Decimal round_step(double size) {
  const double power = std::floor(std::log10(size));
  const double share = size / std::pow(10.0, power);
  const int exponent = static_cast<int>(power);
  if (share < std::sqrt(2.0)) return {false, "1", exponent};
  if (share < std::sqrt(10.0)) return {false, "2", exponent};
  if (share < std::sqrt(50.0)) return {false, "5", exponent};
  return {false, "1", exponent + 1};
}

// A tenth of the power of ten below the value, so that going up from 99 and down from 100 are the same step.
Decimal own_step(double value, bool toward_zero) {
  const double size = std::abs(value) * (toward_zero ? 1.0 - 1e-9 : 1.0 + 1e-9);
  return size == 0.0 ? Decimal{false, "1", -1}
                     : Decimal{false, "1", static_cast<int>(std::floor(std::log10(size))) - 1};
}

Decimal step_of(const FieldRow& row, const Unit* unit, double value, bool down, double fiber_mm) {
  if (row.info->kind == FieldKind::whole) return {false, "1", 0};
  const std::string path = row.info->path();
  const auto rule = std::find_if(rules.begin(), rules.end(), [&](const StepRule& r) { return r.path == path; });
  const bool by_fiber = rule != rules.end() && rule->by == By::fiber;
  if (rule == rules.end() || (by_fiber && !(fiber_mm > 0.0))) return own_step(value, down == (value > 0.0));
  return round_step(in_unit(by_fiber ? rule->size * fiber_mm : rule->size, unit));
}

struct Typed {
  Decimal number;
  const Unit* unit = nullptr;  // null for fields without
  bool says_unit = false;
};

std::optional<Typed> typed_of(const FieldRow& row, std::string_view text) {
  text = trimmed(text);
  if (const auto number = parse_decimal(text)) return Typed{*number, row.unit, false};
  if (row.info->kind != FieldKind::quantity) return std::nullopt;
  const std::size_t end = text.find_first_not_of("0123456789.+-");
  if (end == std::string_view::npos) return std::nullopt;
  const auto number = parse_decimal(trimmed(text.substr(0, end)));
  const Unit* unit = find_unit(trimmed(text.substr(end)));
  if (!number || unit == nullptr || unit->dimension != row.info->dimension) return std::nullopt;
  return Typed{*number, unit, true};
}

bool in_range(const FieldRow& row, const Typed& typed) {
  const Unit* u = typed.unit;
  const auto inside =
      to_double(u == nullptr ? typed.number : scaled(typed.number, u->multiplier, u->divisor, u->exponent));
  return inside && row.info->range.holds(*inside);
}

// Exact for what a field can hold: both are brought to the same power of ten.
std::string sum_text(const Decimal& value, const Decimal& step, double steps) {
  const int finest = std::clamp(std::min(value.exponent, step.exponent), -9, 0);
  const auto count = [finest](const Decimal& d) { return to_double(d).value_or(0.0) * std::pow(10.0, -finest); };
  const double sum = std::round(count(value)) + std::round(count(step)) * steps;
  const std::string text = fmt::format("{:.0f}", std::round(sum));
  const auto decimal = parse_decimal(fmt::format("{}e{}", text, finest));
  return decimal ? to_text(*decimal) : text;
}

}  // namespace

std::optional<std::string> stepped(const FieldRow& row, const std::string& text, double steps, double fiber_mm) {
  const bool steps_apart = row.info->kind == FieldKind::choice;
  const std::optional<Typed> typed = steps_apart ? std::nullopt : typed_of(row, text);
  if (!typed || steps == 0.0) return std::nullopt;
  const double value = to_double(typed->number).value_or(0.0);
  Decimal step = step_of(row, typed->unit, value, steps < 0.0, fiber_mm);
  // A part of a step is a step of a finer grid.
  double times = steps;
  while (std::abs(times) < 1.0 && row.info->kind != FieldKind::whole) {
    times *= 10.0;
    --step.exponent;
  }
  if (row.info->kind == FieldKind::whole)
    times = steps < 0.0 ? std::min(-1.0, std::round(steps)) : std::max(1.0, std::round(steps));
  std::string next = sum_text(typed->number, step, std::round(times));
  const auto number = parse_decimal(next);
  if (!number || !in_range(row, {*number, typed->unit, false})) return std::nullopt;
  if (typed->says_unit) next += fmt::format(" {}", typed->unit->name);
  return next;
}

bool stands_for_itself(const FieldRow& row, const std::string& text) {
  const std::string_view words = trimmed(text);
  const std::optional<Typed> typed = typed_of(row, words);
  if (!typed || !in_range(row, *typed) || words.ends_with('.')) return false;
  if (!typed->says_unit) return true;
  const std::vector<const Unit*> all = units_of(row.info->dimension);
  return std::none_of(all.begin(), all.end(), [&](const Unit* other) {
    return other->name.size() > typed->unit->name.size() && other->name.starts_with(typed->unit->name);
  });
}

}  // namespace laywright
