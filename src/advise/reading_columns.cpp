#include "advise/reading_columns.h"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/spelling.h"
#include "base/text_distance.h"
#include "base/typed_quantity.h"

namespace laywright {
namespace {

// The first name of a field is the one that this program writes.
struct ColumnName {
  std::string_view name;
  ReadingField field;
};
constexpr ColumnName names[] = {
    {"layer", ReadingField::layer},
    {"after_layer", ReadingField::layer},
    {"layer_turns", ReadingField::layer_turns},
    {"turns_of_layer", ReadingField::layer_turns},
    {"counter_turns", ReadingField::counter_turns},
    {"turns", ReadingField::counter_turns},
    {"counter_length", ReadingField::counter_length},
    {"length", ReadingField::counter_length},
    {"wound_length", ReadingField::counter_length},
    {"counter_reading", ReadingField::counter_reading},
    {"counter", ReadingField::counter_reading},
    {"left", ReadingField::left},
    {"left_diameter", ReadingField::left},
    {"diameter_left", ReadingField::left},
    {"middle", ReadingField::middle},
    {"middle_diameter", ReadingField::middle},
    {"diameter_middle", ReadingField::middle},
    {"right", ReadingField::right},
    {"right_diameter", ReadingField::right},
    {"diameter_right", ReadingField::right},
    {"width", ReadingField::width},
    {"layer_width", ReadingField::width},
};

bool is_length(ReadingField field) {
  switch (field) {
    case ReadingField::counter_length:
    case ReadingField::left:
    case ReadingField::middle:
    case ReadingField::right:
    case ReadingField::width: return true;
    default: return false;
  }
}

// In small letters; what is no letter stands between words. Letters that are not of ASCII are kept.
std::vector<std::string> words_of(std::string_view heading) {
  std::vector<std::string> words;
  bool within = false;
  for (const char c : lower(heading)) {
    const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (letter && !within) words.emplace_back();
    if (letter) words.back() += c;
    within = letter;
  }
  return words;
}

const ColumnName* find_name(const std::vector<std::string>& words) {
  const std::string name = fmt::format("{}", fmt::join(words, "_"));
  const auto* const found =
      std::find_if(std::begin(names), std::end(names), [&](const ColumnName& each) { return each.name == name; });
  return found == std::end(names) ? nullptr : found;
}

std::optional<double> length_unit(const std::string& word) {
  const ParsedQuantity one = parse_typed("1 " + word, Dimension::length);
  return one.quantity ? std::optional(one.quantity->value) : std::nullopt;
}

std::string no_column(std::string_view heading) {
  std::vector<std::string> all = column_names();
  std::vector<std::string> known = all;
  for (const ColumnName& each : names) known.emplace_back(each.name);
  const std::string nearest = nearest_word(heading, known);
  return nearest.empty() ? fmt::format("is no column; there are {}", fmt::join(all, ", "))
                         : fmt::format("is no column; did you mean {}?", nearest);
}

ReadHeading of_counter(const std::string& unit, const Counter* counter) {
  if (counter == nullptr) {
    return {
        {},
        "is of the machine's own counter, but the plan has no [machine.counter] to turn it into length by; if it "
        "shows the length that is wound, name the column counter_length with its unit"};
  }
  if (!unit.empty() && unit != lower(counter->unit)) {
    return {{},
            fmt::format("names another unit than the machine's counter, which shows {}", visible(counter->unit))};
  }
  return {ReadingColumn{ReadingField::counter_reading, 1.0}, ""};
}

}  // namespace

ReadHeading read_heading(std::string_view heading, const Counter* counter) {
  std::vector<std::string> words = words_of(heading);
  if (const ColumnName* whole = find_name(words)) {
    if (whole->field == ReadingField::counter_reading) return of_counter("", counter);
    if (!is_length(whole->field)) return {ReadingColumn{whole->field, 1.0}, ""};
    return {{}, fmt::format("says no unit; write it behind, like {} (mm)", whole->name)};
  }
  if (words.size() < 2) return {{}, no_column(heading)};
  const std::string last = words.back();
  words.pop_back();
  if (words.size() > 1 && words.back() == "in") words.pop_back();  // "length in km"
  const ColumnName* name = find_name(words);
  if (name == nullptr) return {{}, no_column(heading)};
  if (name->field == ReadingField::counter_reading) return of_counter(last, counter);
  const std::optional<double> unit = length_unit(last);
  if (!is_length(name->field) || !unit) {
    if (!is_length(name->field)) return {{}, fmt::format("is a number without a unit: name it {}", name->name)};
    return {{}, fmt::format("has no unit of length; there are {}", unit_choices(Dimension::length))};
  }
  return {ReadingColumn{name->field, *unit}, ""};
}

std::vector<std::string> column_names() {
  return {"layer",   "layer_turns", "counter_turns", "counter_length_m", "counter_reading",
          "left_mm", "middle_mm",   "right_mm",      "width_mm"};
}

}  // namespace laywright
