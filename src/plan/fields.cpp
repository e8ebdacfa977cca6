#include "plan/fields.h"

#include <limits>
#include <numbers>
#include <type_traits>

#include <fmt/format.h>

#include "plan/member_field.h"
#include "plan/mixed_colour.h"

namespace laywright {
namespace {

using enum FieldKind;

// A member of the take-up, which a plan may be without.
template <class Member>
Field<PlanDraft> takeup_field(FieldInfo info, Member) {
  Field<PlanDraft> result;
  static_cast<FieldInfo&>(result) = std::move(info);
  result.get = [](const PlanDraft& draft) -> std::optional<double> {
    return draft.takeup ? number_of(Member{}(*draft.takeup)) : std::nullopt;
  };
  result.set = [](PlanDraft& draft, double value) {
    if (!draft.takeup) draft.takeup.emplace();
    assign(Member{}(*draft.takeup), value);
  };
  return result;
}

FieldInfo amount(std::string_view table, std::string_view key, std::string_view usual_unit, Range range,
                 bool required = false) {
  return {table, key, quantity, find_unit(usual_unit)->dimension, usual_unit, required, range, {}};
}

FieldInfo plain(std::string_view table, std::string_view key, FieldKind kind, Range range, bool required = false) {
  return {table, key, kind, Dimension::length, "", required, range, {}};
}

FieldInfo one_of(std::string_view table, std::string_view key, std::vector<std::string> choices) {
  const Range range{0.0, static_cast<double>(choices.size() - 1), false};
  return {table, key, choice, Dimension::length, "", false, range, std::move(choices)};
}

Range above_zero(double high) { return {0.0, high, true}; }
Range from_zero(double high) { return {0.0, high, false}; }
Range either_way(double high) { return {-high, high, false}; }

// Bounds beyond anything that is wound; they keep slips (a missing decimal point, metres for millimetres) and
// numbers that overflow out of the model.
constexpr double longest_part_mm = 10'000.0;  // spools and guides
constexpr double thickest_fiber_mm = 500.0;
constexpr double longest_fiber_mm = 1e12;  // a million km
constexpr double greatest_force_N = 1e7;
constexpr double full_turn_rad = 2.0 * std::numbers::pi;
constexpr double steepest_flange_rad = std::numbers::pi / 3.0;

// A member's name cannot stand in parentheses.
// NOLINTBEGIN(bugprone-macro-parentheses)
#define MEMBER(path) \
  [](auto& owner) -> auto& { return owner.path; }
// NOLINTEND(bugprone-macro-parentheses)

void add_spool(std::vector<Field<PlanDraft>>& all) {
  const auto add = [&](FieldInfo info, auto member) { all.push_back(field<PlanDraft>(std::move(info), member)); };
  add(amount("spool", "barrel_diameter", "mm", above_zero(longest_part_mm), true), MEMBER(spool.barrel_diameter_mm));
  add(amount("spool", "flange_diameter", "mm", above_zero(longest_part_mm), true), MEMBER(spool.flange_diameter_mm));
  add(amount("spool", "inside_width", "mm", above_zero(longest_part_mm), true), MEMBER(spool.inside_width_mm));
  add(amount("spool", "flange_taper", "deg", from_zero(steepest_flange_rad)), MEMBER(spool.flange_taper_rad));
  add(amount("spool", "barrel_taper", "mm", either_way(longest_part_mm)), MEMBER(spool.barrel_taper_mm));
  add(amount("spool", "flange_runout", "mm", from_zero(longest_part_mm)), MEMBER(spool.flange_runout_mm));
  add(amount("spool", "mass", "kg", above_zero(1e6)), MEMBER(spool.mass_kg));
  add(one_of("spool", "look", {"plastic", "wood", "steel"}), MEMBER(spool.look));
}

void add_fiber(std::vector<Field<PlanDraft>>& all) {
  const auto add = [&](FieldInfo info, auto member) { all.push_back(field<PlanDraft>(std::move(info), member)); };
  add(amount("fiber", "diameter", "mm", above_zero(thickest_fiber_mm), true), MEMBER(fiber.diameter_mm));
  add(amount("fiber", "diameter_tolerance", "mm", from_zero(thickest_fiber_mm)),
      MEMBER(fiber.diameter_tolerance_mm));
  add(plain("fiber", "friction", friction, from_zero(10.0), true), MEMBER(fiber.friction));
  add(amount("fiber", "linear_mass", "g/km", above_zero(1e9)), MEMBER(fiber.linear_mass_g_per_km));
  add(one_of("fiber", "section", {"round", "flat"}), MEMBER(fiber.section));
  add(amount("fiber", "modulus", "GPa", above_zero(1e7)), MEMBER(fiber.modulus_MPa));
  add(amount("fiber", "shear_modulus", "GPa", above_zero(1e7)), MEMBER(fiber.shear_modulus_MPa));
  add(plain("fiber", "poisson", number, from_zero(0.5)), MEMBER(fiber.poisson));
  add(amount("fiber", "diameter_scatter", "mm", from_zero(thickest_fiber_mm)), MEMBER(fiber.diameter_scatter_mm));
  add(amount("fiber", "scatter_length", "m", above_zero(longest_fiber_mm)), MEMBER(fiber.scatter_length_mm));
  add(amount("fiber", "core_diameter", "mm", above_zero(thickest_fiber_mm)), MEMBER(fiber.core_diameter_mm));
  add(amount("fiber", "max_tension", "N", above_zero(greatest_force_N)), MEMBER(fiber.max_tension_N));
  add(amount("fiber", "min_bend_diameter", "mm", above_zero(longest_part_mm)), MEMBER(fiber.min_bend_diameter_mm));
  add(one_of("fiber", "look", {"usual", "coated", "glass", "copper", "enamelled", "steel", "yarn"}),
      MEMBER(fiber.look));
  add(one_of("fiber", "colour",
             {"natural", "white", "grey", "black", "blue", "turquoise", "green", "yellow", "orange", "brown", "red",
              "rose", "violet"}),
      MEMBER(fiber.colour));
}

void add_traverse(std::vector<Field<PlanDraft>>& all) {
  const auto add = [&](FieldInfo info, auto member) { all.push_back(field<PlanDraft>(std::move(info), member)); };
  add(one_of("traverse", "motion", {"continuous", "stepped"}), MEMBER(traverse.motion));
  add(amount("traverse", "pitch", "mm", above_zero(longest_part_mm), true), MEMBER(traverse.pitch_mm));
  add(amount("traverse", "left_stop", "mm", either_way(longest_part_mm), true), MEMBER(traverse.left_stop_mm));
  add(amount("traverse", "right_stop", "mm", either_way(longest_part_mm), true), MEMBER(traverse.right_stop_mm));
  add(one_of("traverse", "start", {"left", "right"}), MEMBER(traverse.start));
  add(amount("traverse", "free_length", "mm", from_zero(100'000.0), true), MEMBER(traverse.free_length_mm));
  add(amount("traverse", "step_angle", "deg", from_zero(full_turn_rad)), MEMBER(traverse.step_angle_rad));
  add(amount("traverse", "guide_play", "mm", from_zero(1000.0)), MEMBER(traverse.guide_play_mm));
  add(amount("traverse", "pitch_scatter", "%", from_zero(0.25)), MEMBER(traverse.pitch_scatter));
  constexpr std::string_view reversal = "traverse.reversal";
  add(one_of(reversal, "kind", {"instant", "dwell", "ramp"}), MEMBER(traverse.reversal.kind));
  add(plain(reversal, "turns", number, from_zero(1000.0)), MEMBER(traverse.reversal.turns));
  add(amount(reversal, "lost_motion", "mm", from_zero(1000.0)), MEMBER(traverse.reversal.lost_motion_mm));
  add(amount(reversal, "stop_scatter", "mm", from_zero(1000.0)), MEMBER(traverse.reversal.stop_scatter_mm));
}

void add_wind(std::vector<Field<PlanDraft>>& all) {
  const auto add = [&](FieldInfo info, auto member) { all.push_back(field<PlanDraft>(std::move(info), member)); };
  add(amount("wind", "length", "m", above_zero(longest_fiber_mm)), MEMBER(wind.length_mm));
  add(plain("wind", "turns", number, above_zero(1e9)), MEMBER(wind.turns));
  add(amount("wind", "diameter", "mm", above_zero(longest_part_mm)), MEMBER(wind.diameter_mm));
  add(amount("wind", "tension", "N", above_zero(greatest_force_N)), MEMBER(wind.tension_N));
  add(amount("wind", "line_speed", "m/min", above_zero(1e6)), MEMBER(wind.line_speed_mm_per_s));
}

void add_takeup(std::vector<Field<PlanDraft>>& all) {
  const auto add = [&](FieldInfo info, auto member) { all.push_back(takeup_field(std::move(info), member)); };
  add(one_of("takeup", "control", {"constant torque", "constant tension", "taper"}), MEMBER(control));
  add(plain("takeup", "taper", number, from_zero(1.0)), MEMBER(taper));
  add(amount("takeup", "torque_at_full_current", "N*m", above_zero(1e9)), MEMBER(torque_at_full_current_Nmm));
  add(amount("takeup", "full_current", "A", above_zero(1e5)), MEMBER(full_current_A));
  add(amount("takeup", "speed_ceiling", "rpm", above_zero(1e6)), MEMBER(speed_ceiling_rpm));
  add(one_of("takeup", "length_stop", {"stop", "signal", "both"}), MEMBER(length_stop));
  add(amount("takeup", "reaction_time", "s", from_zero(3600.0)), MEMBER(reaction_time_s));
  add(amount("takeup", "start_ramp", "s", above_zero(3600.0)), MEMBER(start_ramp_s));
  add(amount("takeup", "stop_ramp", "s", above_zero(3600.0)), MEMBER(stop_ramp_s));
}

void add_limits(std::vector<Field<PlanDraft>>& all) {
  const auto add = [&](FieldInfo info, auto member) { all.push_back(field<PlanDraft>(std::move(info), member)); };
  add(plain("limits", "gap", number, from_zero(1000.0)), MEMBER(limits.gap_d));
  add(plain("limits", "pile_up", number, from_zero(1000.0)), MEMBER(limits.pile_up_d));
  add(amount("limits", "rim_clearance", "mm", from_zero(longest_part_mm)), MEMBER(limits.rim_clearance_mm));
  add(plain("limits", "valley", number, from_zero(1000.0)), MEMBER(limits.valley_d));
  add(plain("limits", "unevenness", number, from_zero(1000.0)), MEMBER(limits.unevenness_d));
  add(amount("limits", "open_gaps", "%", from_zero(1.0)), MEMBER(limits.open_gaps));
  add(plain("limits", "flange_gap", number, from_zero(1000.0)), MEMBER(limits.flange_gap_d));
  add(plain("limits", "dropped_turns", number, from_zero(1e6)), MEMBER(limits.dropped_turns_per_km));
  add(plain("limits", "drop_depth", number, from_zero(1000.0)), MEMBER(limits.drop_depth_d));
  add(plain("limits", "ride_ups", number, from_zero(1e6)), MEMBER(limits.ride_ups_per_km));
  add(plain("limits", "ribbon", number, from_zero(1000.0)), MEMBER(limits.ribbon_d));
  add(plain("limits", "payoff_force", number, {1.0, most_payoff_force, true}), MEMBER(limits.payoff_force));
  add(amount("limits", "pull", "%", above_zero(1.0)), MEMBER(limits.pull));
}

std::vector<Field<PlanDraft>> make_plan_fields() {
  std::vector<Field<PlanDraft>> all;
  add_spool(all);
  add_fiber(all);
  add_traverse(all);
  add_wind(all);
  add_takeup(all);
  add_limits(all);
  return all;
}

std::vector<Field<WindStep>> make_step_fields() {
  std::vector<Field<WindStep>> all;
  const auto add = [&](FieldInfo info, auto member) { all.push_back(field<WindStep>(std::move(info), member)); };
  constexpr std::string_view step = "wind.step";
  add(plain(step, "from_layer", whole, {1.0, 1e6, false}, true), MEMBER(from_layer));
  add(amount(step, "pitch", "mm", above_zero(longest_part_mm)), MEMBER(pitch_mm));
  add(amount(step, "left_stop", "mm", either_way(longest_part_mm)), MEMBER(left_stop_mm));
  add(amount(step, "right_stop", "mm", either_way(longest_part_mm)), MEMBER(right_stop_mm));
  return all;
}

#undef MEMBER

std::string joined(const std::vector<std::string>& words) {
  std::string text = words.front();
  for (std::size_t i = 1; i < words.size(); ++i)
    text += fmt::format("{}{}", i + 1 == words.size() ? " or " : ", ", words[i]);
  return text;
}

}  // namespace

const std::vector<Field<PlanDraft>>& plan_fields() {
  static const std::vector<Field<PlanDraft>> all = make_plan_fields();
  return all;
}

const std::vector<Field<WindStep>>& step_fields() {
  static const std::vector<Field<WindStep>> all = make_step_fields();
  return all;
}

const std::vector<OrderField>& order_fields() {
  static const std::vector<OrderField> fields = {{"number", &PlanOrder::number},
                                                 {"customer", &PlanOrder::customer},
                                                 {"lot", &PlanOrder::lot},
                                                 {"spool", &PlanOrder::spool}};
  return fields;
}

std::string step_path(std::size_t index) { return fmt::format("wind.step[{}]", index); }

const Unit* unit_written(const FieldInfo& field, std::string_view written) {
  if (field.kind != quantity) return nullptr;
  const ParsedQuantity parsed = parse_quantity(written, field.dimension);
  return parsed.quantity ? parsed.quantity->unit : find_unit(field.usual_unit);
}

namespace {

bool is_mixed(const FieldInfo& field, double value) {
  constexpr double most = std::numeric_limits<int>::max();
  return takes_mixed(field) && value >= 0.0 && value <= most && mix_of(static_cast<FiberColour>(value)).has_value();
}

}  // namespace

std::string write_value(const FieldInfo& field, double value, const Unit* unit) {
  switch (field.kind) {
    case quantity: return format_quantity(value, unit != nullptr ? *unit : *find_unit(field.usual_unit));
    case choice:
      if (field.range.holds(value)) return field.choices[static_cast<std::size_t>(value)];
      if (is_mixed(field, value)) return mixed_text(static_cast<FiberColour>(value));
      return fmt::format("{}", value);
    case friction:
      if (value == Fiber::held) return "held";
      return fmt::format("{}", value);
    case number:
    case whole: return fmt::format("{}", value);
  }
  return "";
}

bool in_range(const FieldInfo& field, double value) {
  return (field.kind == FieldKind::friction && value == Fiber::held) || is_mixed(field, value) ||
         field.range.holds(value);
}

bool in_quotes(const FieldInfo& field, std::string_view written) {
  return field.kind == FieldKind::quantity || field.kind == FieldKind::choice || written == "held";
}

std::string allowed_text(const FieldInfo& field, const Unit* unit) {
  if (field.kind == choice)
    return joined(field.choices) + (takes_mixed(field) ? "; or a colour like \"#c0392b\"" : "");
  constexpr std::size_t places = 6;
  const auto shown = [&](double value) {
    if (field.kind != quantity) return fmt::format("{}", value);
    return format_quantity(value, unit != nullptr ? *unit : *find_unit(field.usual_unit), places);
  };
  const std::string range = field.range.open
                                ? fmt::format("above {}, up to {}", shown(field.range.low), shown(field.range.high))
                                : fmt::format("{} to {}", shown(field.range.low), shown(field.range.high));
  if (field.kind == friction) return range + ", or \"held\"";
  return field.kind == whole ? "a whole number, " + range : range;
}

}  // namespace laywright
