// Every key of a lay plan, once: its name, what kind of value it takes, its range, and the member that holds it.
// Reading, checking and writing all go by these lists.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "plan/lay_plan.h"

namespace laywright {

inline constexpr std::string_view order_table = "order";

enum class FieldKind {
  quantity,  // text with a unit
  number,
  whole,     // a whole number
  friction,  // a number, or "held"
  choice,    // one of a few words
};

// Both ends allowed, but for a low end that is `open`.
struct Range {
  double low = 0.0;
  double high = 0.0;
  bool open = false;

  // NaN lies in no range.
  [[nodiscard]] bool holds(double value) const { return (open ? value > low : value >= low) && value <= high; }
};

struct FieldInfo {
  std::string_view table;  // "traverse.reversal"
  std::string_view key;    // "turns"
  FieldKind kind = FieldKind::quantity;
  Dimension dimension = Dimension::length;  // of a quantity
  std::string_view usual_unit;              // of a quantity: what a new value is written in
  bool required = false;
  Range range;
  std::vector<std::string> choices;  // in the order of the enumeration

  [[nodiscard]] std::string path() const { return std::string(table) + "." + std::string(key); }
};

// A value is a number in the unit used inside; a choice is its place in `choices`; `held` is infinity.
template <class Owner>
struct Field : FieldInfo {
  std::optional<double> (*get)(const Owner&) = nullptr;
  void (*set)(Owner&, double) = nullptr;
};

// All but texts and the wind's steps, in the order in which a plan is written. A field of the take-up
// has a value only where the draft has a take-up; setting one gives it one.
[[nodiscard]] const std::vector<Field<PlanDraft>>& plan_fields();

// What is for pictures alone: no wind depends on it.
[[nodiscard]] inline bool is_look(const FieldInfo& field) { return field.key == "look" || field.key == "colour"; }

// Of one [[wind.step]]; table is "wind.step".
[[nodiscard]] const std::vector<Field<WindStep>>& step_fields();

// A text of [order].
struct OrderField {
  std::string_view key;  // "number"
  std::string PlanOrder::*text;

  [[nodiscard]] std::string path() const { return std::string(order_table) + "." + std::string(key); }
};

// All of them, in the order in which a plan is written.
[[nodiscard]] const std::vector<OrderField>& order_fields();

// "wind.step[2]": where a step's origins stand.
[[nodiscard]] std::string step_path(std::size_t index);

// A value as it is written in a plan, without quotes: "0.26 mm", "held", "dwell", "12". With `unit` (of the
// field's dimension), in that one.
[[nodiscard]] std::string write_value(const FieldInfo& field, double value, const Unit* unit = nullptr);

// Whether a field may have that value; `held` stands beyond the range of friction.
[[nodiscard]] bool in_range(const FieldInfo& field, double value);

// Whether TOML has it in quotes, as write_value writes it.
[[nodiscard]] bool in_quotes(const FieldInfo& field, std::string_view written);

// "above 0 mm, up to 10000 mm"; "continuous or stepped".
[[nodiscard]] std::string allowed_text(const FieldInfo& field, const Unit* unit = nullptr);

// The unit that this value was written in, or the field's usual one; null for fields that have none.
[[nodiscard]] const Unit* unit_written(const FieldInfo& field, std::string_view written);

inline constexpr std::string_view format_line = "lay-plan 1";

}  // namespace laywright
