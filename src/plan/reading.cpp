#include "plan/reading.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/text_distance.h"
#include "plan/dial_text.h"
#include "plan/document.h"
#include "plan/entry_issues.h"
#include "plan/fields.h"
#include "plan/take_over.h"
#include "plan/value_reader.h"

namespace laywright {
namespace {

constexpr std::string_view top_tables[] = {order_table, "spool",  "fiber",  "traverse",
                                           "wind",      "takeup", "limits", "machine"};

// What stands between quotes in the three tables that may name an entry.
constexpr std::string_view name_key = "name";

std::optional<EntryKind> kind_of_table(std::string_view table) {
  for (const EntryKind kind : entry_kinds) {
    if (table == name_of(kind)) return kind;
  }
  return std::nullopt;
}

class Reader {
 public:
  Reader(const Entry& document, DraftReading& reading, const EntrySource* entries)
      : document_(document), reading_(reading), entries_(entries), tell_(reading.draft.file, reading.issues) {}

  void read() {
    // A plan of another format is not read any further: its keys may mean something else.
    reading_.readable = tell_.has_format(document_, {format_line, "plan", a_plan});
    const bool no_format = document_.child("format") == nullptr;
    reading_.has_values = reading_.readable || (no_format && has_tables());
    if (!reading_.has_values) return;
    for (const Entry& entry : document_.children) read_top(entry);
    for (const Name& name : names_) take_over(name);
    note_missing();
  }

 private:
  // Without its first line it is taken for a lay plan where it has the tables of one.
  [[nodiscard]] bool has_tables() const {
    return std::any_of(document_.children.begin(), document_.children.end(), [](const Entry& entry) {
      return std::find(std::begin(top_tables), std::end(top_tables), entry.key) != std::end(top_tables);
    });
  }

  void read_top(const Entry& entry) {
    if (entry.key == "format") return;
    if (entry.key == "title") return read_text(entry, entry.key, reading_.draft.title);
    if (entry.key == "notes") return read_text(entry, entry.key, reading_.draft.notes);
    if (std::find(std::begin(top_tables), std::end(top_tables), entry.key) != std::end(top_tables)) {
      return read_table(entry, entry.key);
    }
    unknown(entry, "");
  }

  void read_text(const Entry& entry, const std::string& path, std::string& text) {
    if (entry.kind != Entry::Kind::text) return tell_.add(entry, path, "must be text in quotes");
    text = entry.text;
    reading_.draft.origins[path] = {entry.line, entry.text};
  }

  void read_order(const Entry& entry) {
    for (const OrderField& field : order_fields()) {
      if (field.key == entry.key) return read_text(entry, field.path(), reading_.draft.order.*field.text);
    }
    unknown(entry, std::string(order_table));
  }

  void read_table(const Entry& table, const std::string& path) {
    if (!tell_.is_table(table, path)) return mark_unread(path);
    reading_.draft.origins[path] = {table.line, ""};
    if (path == "takeup") reading_.draft.takeup.emplace();
    for (const Entry& entry : table.children) {
      if (const auto kind = kind_of_table(path); kind && entry.key == name_key) {
        read_name(entry, *kind);
      } else if (path == "traverse" && entry.key == "reversal") {
        read_table(entry, "traverse.reversal");
      } else if (path == order_table) {
        read_order(entry);
      } else if (path == "wind" && entry.key == "step") {
        read_steps(entry);
      } else if (path == "machine" && entry.key == "dials") {
        read_dials(entry, reading_.draft.file, reading_.draft.machine, reading_.issues, note());
      } else if (path == "machine" && entry.key == "counter") {
        read_counter(entry, reading_.draft.file, reading_.draft.machine, reading_.issues, note());
      } else {
        read_field(plan_fields(), entry, path, path, reading_.draft);
      }
    }
  }

  std::function<void(const std::string&, int)> note() {
    return [this](const std::string& path, int line) { reading_.draft.origins[path] = {line, ""}; };
  }

  void read_name(const Entry& entry, EntryKind kind) {
    const std::string key = fmt::format("{}.{}", name_of(kind), name_key);
    if (entry.kind != Entry::Kind::text)
      return tell_.add(entry, key, "must be the name of a catalogue's entry, in quotes");
    names_.push_back({kind, &entry, key});
    reading_.draft.origins[key] = {entry.line, entry.text};
  }

  struct Name {
    EntryKind kind;
    const Entry* entry;
    std::string key;
  };

  void take_over(const Name& name) {
    const Issues issues = laywright::take_over(reading_, name.kind, name.entry->text, name.entry->line, entries_);
    if (has_error(issues)) reading_.unread.insert(name.key);
    for (Issue issue : issues) {
      if (issue.file.empty()) {
        tell_.add(*name.entry, name.key, std::move(issue.what), std::move(issue.allowed));
      } else {
        reading_.issues.push_back(std::move(issue));
      }
    }
  }

  void read_steps(const Entry& list) {
    if (!tell_.is_list_of_tables(list, "wind.step")) return;
    for (const Entry& item : list.children) {
      const std::string path = step_path(reading_.draft.wind.steps.size());
      reading_.draft.origins[path] = {item.line, ""};
      WindStep& step = reading_.draft.wind.steps.emplace_back();
      for (const Entry& entry : item.children) read_field(step_fields(), entry, "wind.step", path, step);
      if (item.child("from_layer") == nullptr && reading_.unread.count(path + ".from_layer") == 0) {
        tell_.add(item.line, path + ".from_layer", "", "is missing; it says from which layer on the step holds");
        reading_.unread.insert(path + ".from_layer");
      }
    }
  }

  // `table` names the field, `path` the place ("wind.step" and "wind.step[2]").
  template <class Owner>
  void read_field(const std::vector<Field<Owner>>& fields, const Entry& entry, std::string_view table,
                  const std::string& path, Owner& owner) {
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [&](const auto& f) { return f.table == table && f.key == entry.key; });
    if (field == fields.end()) return unknown(entry, path);
    const std::string key = path + "." + entry.key;
    ReadValue read = read_value(*field, entry);
    if (!read.number) {
      reading_.unread.insert(key);
      return tell_.add(entry, key, std::move(read.problem), std::move(read.allowed));
    }
    field->set(owner, *read.number);
    reading_.draft.origins[key] = {entry.line, entry.text};
  }

  void unknown(const Entry& entry, const std::string& path) {
    const std::vector<std::string> known = keys_of(path);
    const bool table = entry.kind == Entry::Kind::table;
    std::string what = table ? "is not a table of a lay plan" : "is not a key of a lay plan";
    if (const std::string home = home_of(entry.key); !home.empty() && !table) {
      what = fmt::format("does not belong here; move it to [{}]", home);
    } else if (const std::string nearest = nearest_word(entry.key, known); !nearest.empty()) {
      what += fmt::format("; did you mean {}?", nearest);
      // So that it is not missed a second time.
      reading_.unread.insert(path.empty() ? nearest : path + "." + nearest);
    } else {
      what += path.empty() ? "; remove it" : fmt::format("; remove it, or use one that [{}] has", table_name(path));
    }
    std::string choices;
    for (const std::string& key : known) choices += (choices.empty() ? "" : ", ") + key;
    tell_.add(entry, path.empty() ? entry.key : path + "." + entry.key, std::move(what), std::move(choices));
  }

  static std::string table_name(const std::string& path) { return path.substr(0, path.find('[')); }

  static std::vector<std::string> keys_of(const std::string& path) {
    if (path.empty()) {
      std::vector<std::string> names = {"format", "title", "notes"};
      names.insert(names.end(), std::begin(top_tables), std::end(top_tables));
      return names;
    }
    std::vector<std::string> keys;
    const auto collect = [&](const auto& fields) {
      for (const auto& field : fields) {
        if (field.table == table_name(path)) keys.emplace_back(field.key);
      }
    };
    collect(plan_fields());
    collect(step_fields());
    if (path == order_table) {
      for (const OrderField& field : order_fields()) keys.emplace_back(field.key);
    }
    if (kind_of_table(path)) keys.emplace_back(name_key);
    if (path == "traverse") keys.emplace_back("reversal");
    if (path == "wind") keys.emplace_back("step");
    if (path == "machine") keys.insert(keys.end(), {"dials", "counter"});
    return keys;
  }

  // The one table that has this key; empty if none or several have.
  static std::string home_of(const std::string& key) {
    std::string home;
    for (const auto& field : plan_fields()) {
      if (field.key != key) continue;
      if (!home.empty()) return "";
      home = field.table;
    }
    return home;
  }

  // Keys of a table that could not be read are not missed one by one.
  void mark_unread(const std::string& path) {
    for (const auto& field : plan_fields()) {
      if (field.table == path) reading_.unread.insert(field.path());
    }
  }

  void note_missing() {
    for (const std::string_view table : top_tables) note_missing(std::string(table));
  }

  void note_missing(const std::string& table) {
    if (reading_.unread.count(table) > 0) return mark_unread(table);
    std::vector<std::string> missing;
    for (const auto& field : plan_fields()) {
      const std::string key = field.path();
      if (field.table != table || !field.required) continue;
      if (reading_.draft.origins.count(key) > 0 || reading_.unread.count(key) > 0) continue;
      reading_.unread.insert(key);
      missing.emplace_back(field.key);
    }
    if (missing.empty()) return;
    const auto origin = reading_.draft.origins.find(table);
    if (origin == reading_.draft.origins.end()) {
      return tell_.add(0, table, "",
                       fmt::format("the table [{}] is missing; it needs {}", table, fmt::join(missing, ", ")));
    }
    for (const std::string& key : missing) {
      const std::string path = fmt::format("{}.{}", table, key);
      tell_.add(origin->second.line, path, "",
                fmt::format("is missing; add it below [{}]{}", table, silent_entries(reading_.draft, path)));
    }
  }

  const Entry& document_;
  DraftReading& reading_;
  const EntrySource* entries_;
  EntryIssues tell_;
  std::vector<Name> names_;
};

}  // namespace

DraftReading read_draft(std::string_view text, std::string file_name, const EntrySource* entries) {
  DraftReading reading;
  reading.draft.file = std::move(file_name);
  const Result<Entry> document = read_document(text, reading.draft.file);
  if (!document) {
    reading.issues = document.issues();
    return reading;
  }
  Reader(document.value(), reading, entries).read();
  return reading;
}

}  // namespace laywright
