#include "plan/dial_text.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/readable.h"
#include "base/text_distance.h"
#include "plan/dial_fields.h"
#include "plan/entry_issues.h"
#include "plan/plan_text.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

constexpr std::size_t longest_unit = 12;  // characters; what a line of the sheet has room for
constexpr std::size_t most_points = 200;
constexpr double least_per_unit = 1e-9;

// Reads one table, and tells what is wrong with it.
class TableReader {
 public:
  TableReader(std::string path, const std::string& file, Issues& issues)
      : path_(std::move(path)), tell_(file, issues), before_(issues.size()) {}

  [[nodiscard]] bool sound() const { return tell_.count() == before_; }

  void add(const Entry& at, const std::string& key, std::string what, std::string allowed = "") {
    tell_.add(at, below(key), std::move(what), std::move(allowed));
  }

  bool is_table(const Entry& entry) { return tell_.is_table(entry, path_); }

  void unknown(const Entry& entry, const std::vector<std::string>& known, std::string_view what) {
    const std::string nearest = nearest_word(entry.key, known);
    add(entry, entry.key,
        fmt::format("is not {}{}", what, nearest.empty() ? "" : fmt::format("; did you mean {}?", nearest)),
        fmt::format("{}", fmt::join(known, ", ")));
  }

  template <class Owner>
  void read_keys(const Entry& table, const std::vector<Field<Owner>>& fields, Owner& owner, bool has_points) {
    std::vector<std::string> known{"unit"};
    for (const auto& field : fields) known.emplace_back(field.key);
    if (has_points) known.emplace_back("points");
    for (const Entry& entry : table.children) {
      const auto field =
          std::find_if(fields.begin(), fields.end(), [&](const auto& f) { return f.key == entry.key; });
      if (entry.key == "unit") {
        read_unit(entry, owner.unit);
      } else if (field != fields.end()) {
        if (const std::optional<double> value = read_number(*field, entry, entry.key)) field->set(owner, *value);
      } else if (!has_points || entry.key != "points") {
        unknown(entry, known, "a key of this table");
      }
    }
    if (table.child("unit") == nullptr) add(table, "", "says not what the reading counts; give unit, like \"div\"");
  }

  std::optional<double> read_number(const FieldInfo& field, const Entry& entry, const std::string& key) {
    return tell_.number(field, entry, below(key));
  }

  void read_points(const Entry& list, const FieldInfo& of, Dial& dial) {
    const std::string form = fmt::format("[[1, {0}], [2, {0}]]",
                                         in_quotes(of, "") ? "\"... " + std::string(of.usual_unit) + "\"" : "...");
    const auto is_pair = [](const Entry& e) { return e.kind == Entry::Kind::list && e.children.size() == 2; };
    if (list.kind != Entry::Kind::list || list.children.size() < 2 ||
        !std::all_of(list.children.begin(), list.children.end(), is_pair)) {
      return add(list, "points",
                 fmt::format("must be a list of two or more pairs, reading and value, like {}", form));
    }
    if (list.children.size() > most_points)
      return add(list, "points", "has too many pairs", fmt::format("up to {}", most_points));
    const FieldInfo reading_key = number_key("points", {-greatest_reading, greatest_reading, false});
    for (const Entry& pair : list.children) {
      const auto reading = read_number(reading_key, pair.children[0], "points");
      const auto value = read_number(value_key("points", of), pair.children[1], "points");
      if (!reading || !value) return;
      dial.points.push_back({*reading, *value});
    }
    const bool up = dial.points.back().value > dial.points.front().value;
    for (std::size_t i = 1; i < dial.points.size(); ++i) {
      const DialPoint &a = dial.points[i - 1], &b = dial.points[i];
      if (b.reading <= a.reading)
        return add(list.children[i], "points",
                   "its reading is not above the one before; put the pairs in rising order");
      if (up ? b.value <= a.value : b.value >= a.value)
        return add(list.children[i], "points",
                   "its value turns back; from reading to reading values must rise, or fall, all the way");
    }
  }

 private:
  [[nodiscard]] std::string below(const std::string& key) const { return key.empty() ? path_ : path_ + "." + key; }

  void read_unit(const Entry& entry, std::string& unit) {
    const bool fits = entry.kind == Entry::Kind::text && !entry.text.empty() &&
                      character_count(entry.text) <= longest_unit && visible(entry.text) == entry.text;
    if (!fits)
      return add(entry, "unit", "must be a word for what the reading counts, in quotes, like \"div\"",
                 fmt::format("1 to {} characters", longest_unit));
    unit = entry.text;
  }

  std::string path_;
  EntryIssues tell_;
  std::size_t before_;
};

void check_dial(TableReader& reader, const Entry& table, const Dial& dial) {
  const Entry* points = table.child("points");
  const Entry* law = table.child("law");
  if (!dial.per_unit && points == nullptr)
    return reader.add(table, "",
                      "says not how reading and value belong together; give per_unit, or measured points");
  if (points != nullptr && (dial.per_unit || table.child("at_zero") != nullptr || law != nullptr))
    return reader.add(*points, "points", "stand in place of per_unit, at_zero and law; keep one of them");
  if (dial.per_unit && std::abs(*dial.per_unit) < least_per_unit)
    return reader.add(*table.child("per_unit"), "per_unit", "is nothing; the dial would set no value");
  if (dial.least && dial.greatest && *dial.least >= *dial.greatest)
    return reader.add(*table.child("greatest"), "greatest", "is not above the least reading");
}

void read_dial(const Entry& table, const DialPlace& place, TableReader& reader, MachineDials& to) {
  const FieldInfo& of = *field_of_dial(place.name);
  Dial dial;
  reader.read_keys(table, fields_of_dial(of), dial, true);
  if (const Entry* points = table.child("points")) reader.read_points(*points, of, dial);
  if (reader.sound()) check_dial(reader, table, dial);
  if (reader.sound()) to.dials[std::string(place.name)] = std::move(dial);
}

std::string literal(const FieldInfo& field, double value) {
  const std::string text = write_value(field, value);
  return in_quotes(field, text) ? fmt::format("\"{}\"", text) : text;
}

template <class Owner>
void add_keys(DialLines& lines, const std::vector<Field<Owner>>& fields, const Owner& owner) {
  lines.keys.emplace_back("unit", toml_text(owner.unit));
  for (const auto& field : fields) {
    if (const std::optional<double> value = field.get(owner))
      lines.keys.emplace_back(field.key, literal(field, *value));
  }
}

DialLines dial_lines(const std::string& name, const Dial& dial) {
  const FieldInfo& of = *field_of_dial(name);
  DialLines lines{fmt::format("{}.{}", dials_table, name), {}};
  add_keys(lines, fields_of_dial(of), dial);
  if (dial.points.empty()) return lines;
  std::string points;
  for (const DialPoint& point : dial.points)
    points += fmt::format("{}[{}, {}]", points.empty() ? "" : ", ", point.reading, literal(of, point.value));
  lines.keys.emplace_back("points", fmt::format("[{}]", points));
  return lines;
}

}  // namespace

const FieldInfo* field_of_dial(std::string_view name) {
  for (const DialPlace& place : dial_places()) {
    if (place.name == name) return field_at(PlanDraft{}, place.path);
  }
  return nullptr;
}

void read_dials(const Entry& dials, const std::string& file, MachineDials& to, Issues& issues,
                const std::function<void(const std::string&, int)>& note) {
  TableReader all(std::string(dials_table), file, issues);
  if (!all.is_table(dials)) return;
  for (const Entry& table : dials.children) {
    const auto place = std::find_if(dial_places().begin(), dial_places().end(),
                                    [&](const DialPlace& each) { return each.name == table.key; });
    if (place == dial_places().end()) {
      std::vector<std::string> known;
      for (const DialPlace& each : dial_places()) known.emplace_back(each.name);
      all.unknown(table, known, "a dial that a machine may have");
      continue;
    }
    const std::string path = fmt::format("{}.{}", dials_table, place->name);
    TableReader reader(path, file, issues);
    if (!reader.is_table(table)) continue;
    note(path, table.line);
    read_dial(table, *place, reader, to);
  }
}

void read_counter(const Entry& table, const std::string& file, MachineDials& to, Issues& issues,
                  const std::function<void(const std::string&, int)>& note) {
  const std::string path(counter_table);
  TableReader reader(path, file, issues);
  if (!reader.is_table(table)) return;
  note(path, table.line);
  Counter counter;
  reader.read_keys(table, fields_of_counter(), counter, false);
  if (table.child("wheel_circumference") == nullptr)
    reader.add(table, "", "says not how large its wheel is; give wheel_circumference");
  if (reader.sound()) to.counter = std::move(counter);
}

std::vector<DialLines> lines_of(const MachineDials& machine) {
  std::vector<DialLines> all;
  for (const DialPlace& place : dial_places()) {
    if (const auto found = machine.dials.find(place.name); found != machine.dials.end())
      all.push_back(dial_lines(found->first, found->second));
  }
  if (!machine.counter) return all;
  all.push_back({std::string(counter_table), {}});
  add_keys(all.back(), fields_of_counter(), *machine.counter);
  return all;
}

std::vector<std::string> dial_keys() {
  std::vector<std::string> keys{"dials", "counter", "unit", "points"};
  for (const DialPlace& place : dial_places()) keys.emplace_back(place.name);
  for (const char* name : {"tension", "right_stop"}) {
    for (const auto& field : fields_of_dial(*field_of_dial(name))) keys.emplace_back(field.key);
  }
  for (const auto& field : fields_of_counter()) keys.emplace_back(field.key);
  return keys;
}

}  // namespace laywright
