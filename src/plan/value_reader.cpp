#include "plan/value_reader.h"

#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/readable.h"
#include "base/text_distance.h"
#include "plan/mixed_colour.h"

namespace laywright {
namespace {

using Kind = Entry::Kind;

bool is_number(const Entry& entry) { return entry.kind == Kind::number || entry.kind == Kind::whole; }

ReadValue problem(std::string text, std::string allowed = "") {
  return {std::nullopt, std::move(text), std::move(allowed)};
}

ReadValue read_quantity(const FieldInfo& field, const Entry& entry) {
  if (is_number(entry) && std::isfinite(entry.number)) {
    return problem(fmt::format("has no unit; write it in quotes with {}, like \"{} {}\"",
                               unit_choices(field.dimension), readable(entry.text), field.usual_unit));
  }
  if (entry.kind != Kind::text) {
    return problem(fmt::format("must be a number and a unit in quotes, like \"1.5 {}\"", field.usual_unit));
  }
  ParsedQuantity parsed = parse_quantity(entry.text, field.dimension);
  if (!parsed.quantity) return problem(std::move(parsed.problem));
  return {parsed.quantity->value, "", ""};
}

ReadValue read_number(const FieldInfo& field, const Entry& entry) {
  if (entry.kind == Kind::text && parse_decimal(entry.text)) {
    return problem(fmt::format("is a plain number here; write it without quotes: {}", readable(entry.text)));
  }
  if (!is_number(entry)) return problem("must be a plain number, without quotes or unit", allowed_text(field));
  if (!std::isfinite(entry.number)) return problem("is not a finite number", allowed_text(field));
  return {entry.number, "", ""};
}

ReadValue read_whole(const FieldInfo& field, const Entry& entry) {
  ReadValue read = read_number(field, entry);
  // The range is checked with all others; here it must fit the member, an int.
  constexpr double most = std::numeric_limits<int>::max();
  if (read.number && (std::floor(*read.number) != *read.number || std::abs(*read.number) > most)) {
    return problem("must be a whole number", allowed_text(field));
  }
  return read;
}

ReadValue read_friction(const FieldInfo& field, const Entry& entry) {
  if (entry.kind == Kind::text && entry.text == "held") return {Fiber::held, "", ""};
  if (is_number(entry) && std::isinf(entry.number)) {
    return problem("is not a finite number; for a fiber that never slips write \"held\"", allowed_text(field));
  }
  if (entry.kind == Kind::text && !parse_decimal(entry.text)) {
    return problem("must be a plain number, or \"held\" for a fiber that never slips", allowed_text(field));
  }
  return read_number(field, entry);
}

ReadValue read_choice(const FieldInfo& field, const Entry& entry) {
  if (entry.kind != Kind::text) return problem("must be one of a few words, in quotes", allowed_text(field));
  if (const auto choice = choice_written(field, entry.text)) return {*choice, "", ""};
  if (takes_mixed(field) && entry.text.starts_with('#'))
    return problem(
        "is no colour: behind # there are six digits, 0 to 9 and a to f, two each for red, green and blue",
        allowed_text(field));
  const std::string nearest = nearest_word(entry.text, field.choices);
  if (nearest.empty()) return problem("is not one of the choices", allowed_text(field));
  return problem(fmt::format("is not one of the choices; did you mean \"{}\"?", nearest), allowed_text(field));
}

}  // namespace

ReadValue read_value(const FieldInfo& field, const Entry& entry) {
  if (entry.kind == Kind::table || entry.kind == Kind::list) {
    return problem("must be a single value, not a table or list");
  }
  switch (field.kind) {
    case FieldKind::quantity: return read_quantity(field, entry);
    case FieldKind::number: return read_number(field, entry);
    case FieldKind::whole: return read_whole(field, entry);
    case FieldKind::friction: return read_friction(field, entry);
    case FieldKind::choice: return read_choice(field, entry);
  }
  return problem("cannot be read");
}

std::string shown_value(const Entry& entry) {
  if (entry.kind == Kind::text) return fmt::format("\"{}\"", readable(entry.text));
  return readable(entry.text);
}

}  // namespace laywright
