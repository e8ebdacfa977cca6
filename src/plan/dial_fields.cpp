#include "plan/dial_fields.h"

#include <optional>
#include <utility>

namespace laywright {
namespace {

template <class Owner>
Field<Owner> made(FieldInfo info, std::optional<double> (*get)(const Owner&), void (*set)(Owner&, double)) {
  Field<Owner> field;
  static_cast<FieldInfo&>(field) = std::move(info);
  field.get = get;
  field.set = set;
  return field;
}

}  // namespace

FieldInfo number_key(std::string_view key, Range range) {
  return {"", key, FieldKind::number, Dimension::length, "", false, range, {}};
}

FieldInfo value_key(std::string_view key, const FieldInfo& of) {
  FieldInfo info = of;
  info.key = key;
  info.required = false;
  info.range = {-greatest_reading, greatest_reading, false};
  return info;
}

std::vector<Field<Dial>> fields_of_dial(const FieldInfo& of) {
  const Range any{-greatest_reading, greatest_reading, false};
  std::vector<Field<Dial>> all{
      made<Dial>(
          value_key("per_unit", of), [](const Dial& d) { return d.per_unit; },
          [](Dial& d, double value) { d.per_unit = value; }),
      made<Dial>(
          value_key("at_zero", of),
          [](const Dial& d) { return d.at_zero == 0.0 ? std::nullopt : std::optional(d.at_zero); },
          [](Dial& d, double value) { d.at_zero = value; }),
      made<Dial>(
          {"",
           "law",
           FieldKind::choice,
           Dimension::length,
           "",
           false,
           {0.0, 1.0, false},
           {"proportional", "inverse"}},
          [](const Dial& d) {
            return d.law == DialLaw::proportional ? std::nullopt : std::optional(static_cast<double>(d.law));
          },
          [](Dial& d, double value) { d.law = static_cast<DialLaw>(value); }),
      made<Dial>(
          number_key("step", {0.0, greatest_reading, true}), [](const Dial& d) { return d.step; },
          [](Dial& d, double value) { d.step = value; }),
      made<Dial>(
          number_key("least", any), [](const Dial& d) { return d.least; },
          [](Dial& d, double value) { d.least = value; }),
      made<Dial>(
          number_key("greatest", any), [](const Dial& d) { return d.greatest; },
          [](Dial& d, double value) { d.greatest = value; })};
  if (of.key == "right_stop") {
    all.push_back(made<Dial>(
        {"",
         "from",
         FieldKind::choice,
         Dimension::length,
         "",
         false,
         {0.0, 1.0, false},
         {"right flange", "left flange"}},
        [](const Dial& d) { return d.from_left ? std::optional(1.0) : std::nullopt; },
        [](Dial& d, double value) { d.from_left = value != 0.0; }));
  }
  if (of.dimension == Dimension::force && of.kind == FieldKind::quantity) {
    all.push_back(made<Dial>(
        {"", "diameter", FieldKind::quantity, Dimension::length, "mm", false, {0.0, 10'000.0, true}, {}},
        [](const Dial& d) { return d.diameter_mm; }, [](Dial& d, double value) { d.diameter_mm = value; }));
  }
  return all;
}

std::vector<Field<Counter>> fields_of_counter() {
  return {
      made<Counter>(
          {"", "wheel_circumference", FieldKind::quantity, Dimension::length, "mm", true, {0.0, 10'000.0, true}, {}},
          [](const Counter& c) { return std::optional(c.wheel_mm); },
          [](Counter& c, double value) { c.wheel_mm = value; }),
      made<Counter>(
          number_key("counts_per_turn", {0.0, 1e6, true}),
          [](const Counter& c) { return std::optional(c.counts_per_turn); },
          [](Counter& c, double value) { c.counts_per_turn = value; }),
      made<Counter>(
          {"", "error", FieldKind::quantity, Dimension::share, "%", false, {-0.5, 0.5, false}, {}},
          [](const Counter& c) { return c.error == 0.0 ? std::nullopt : std::optional(c.error); },
          [](Counter& c, double value) { c.error = value; }),
      made<Counter>(
          number_key("step", {0.0, greatest_reading, true}), [](const Counter& c) { return std::optional(c.step); },
          [](Counter& c, double value) { c.step = value; })};
}

}  // namespace laywright
