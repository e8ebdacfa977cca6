#include "store/catalogue.h"

#include <algorithm>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/text_distance.h"
#include "plan/dial_text.h"
#include "plan/document.h"
#include "plan/entry_issues.h"
#include "plan/fields.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

class CatalogueReader {
 public:
  CatalogueReader(const std::string& file, Catalogue& catalogue)
      : file_(file), catalogue_(catalogue), tell_(file, catalogue.issues) {}

  void read(const Entry& document) {
    if (!tell_.has_format(document, {catalogue_format, "catalogue", "a catalogue"})) return;
    for (const Entry& entry : document.children) {
      if (entry.key != "format") read_list(entry);
    }
  }

 private:
  void read_list(const Entry& list) {
    const auto kind = std::find_if(entry_kinds.begin(), entry_kinds.end(),
                                   [&](EntryKind each) { return name_of(each) == list.key; });
    if (kind == entry_kinds.end()) {
      return tell_.add(list, list.key, "is no list of a catalogue", "[[spool]], [[fiber]] and [[machine]]");
    }
    if (!tell_.is_list_of_tables(list, list.key)) return;
    for (const Entry& table : list.children) read_entry(table, *kind);
  }

  void read_entry(const Entry& table, EntryKind kind) {
    const std::size_t before = tell_.count();
    const auto sound = [&] { return tell_.count() == before; };
    CatalogueEntry entry;
    entry.named.kind = kind;
    entry.named.file = file_;
    entry.named.line = table.line;
    entry.named.name = text(table, kind, "name", "what plans call it");
    entry.source =
        text(table, kind, "source", "where its figures come from, like a standard or \"measured\" and a date");
    const std::string path = kind == EntryKind::machine ? "" : std::string(name_of(kind));
    for (const Entry& each : table.children) {
      if (each.key == "name" || each.key == "source") continue;
      read_key(each, path, entry.named);
    }
    if (sound() && entry.named.values.empty() && entry.named.dials.empty()) {
      tell_.add(table.line, std::string(name_of(kind)), "",
                fmt::format("the entry \"{}\" has no values", entry.named.name));
    }
    refuse_twin(entry.named);
    if (sound()) catalogue_.entries.push_back(std::move(entry));
  }

  std::string text(const Entry& table, EntryKind kind, std::string_view key, std::string_view purpose) {
    const std::string path = fmt::format("{}.{}", name_of(kind), key);
    const Entry* entry = table.child(key);
    if (entry == nullptr) {
      tell_.add(table.line, path, "", fmt::format("is missing: {}", purpose));
    } else if (entry->kind != Entry::Kind::text || entry->text.empty()) {
      tell_.add(*entry, path, fmt::format("must be a text in quotes: {}", purpose));
    } else {
      return entry->text;
    }
    return "";
  }

  // `path` of the plan's table: "traverse.reversal"; empty right below a machine.
  void read_key(const Entry& entry, const std::string& path, NamedEntry& named) {
    const std::string key = path.empty() ? entry.key : fmt::format("{}.{}", path, entry.key);
    if (named.kind == EntryKind::machine && (key == "dials" || key == "counter")) return read_settings(entry, named);
    if (entry.kind == Entry::Kind::table) {
      const bool has_keys = std::any_of(plan_fields().begin(), plan_fields().end(), [&](const auto& field) {
        return field.table == key && may_give(named.kind, field);
      });
      if (!has_keys || named.kind != EntryKind::machine) return unknown(entry, key, named.kind);
      for (const Entry& child : entry.children) read_key(child, key, named);
      return;
    }
    const FieldInfo* field = field_at(PlanDraft{}, key);
    if (field == nullptr || !may_give(named.kind, *field)) return unknown(entry, key, named.kind);
    if (const std::optional<double> value = tell_.number(*field, entry, key))
      named.values[key] = {*value, entry.text, entry.line};
  }

  // How a machine is set.
  void read_settings(const Entry& entry, NamedEntry& named) {
    const auto read = entry.key == "dials" ? read_dials : read_counter;
    read(entry, file_, named.dials, catalogue_.issues, [](const std::string&, int) {});
  }

  void unknown(const Entry& entry, const std::string& key, EntryKind kind) {
    std::vector<std::string> known;
    for (const auto& field : plan_fields()) {
      if (may_give(kind, field)) known.push_back(field.path());
    }
    const std::string nearest = nearest_word(key, known);
    std::string what = fmt::format("is not a key that a {} may have", name_of(kind));
    if (key == "traverse.pitch" || key == "traverse.left_stop" || key == "traverse.right_stop") {
      what += "; it belongs to a wind, and so to its plan";
    } else if (!nearest.empty()) {
      what += fmt::format("; did you mean {}?", nearest);
    }
    tell_.add(entry, key, std::move(what));
  }

  void refuse_twin(const NamedEntry& named) {
    const auto twin = std::find_if(catalogue_.entries.begin(), catalogue_.entries.end(), [&](const auto& other) {
      return other.named.kind == named.kind && other.named.name == named.name;
    });
    if (twin == catalogue_.entries.end() || named.name.empty()) return;
    tell_.add(named.line, fmt::format("{}.name", name_of(named.kind)), fmt::format("\"{}\"", readable(named.name)),
              fmt::format("is the name of another {} too, in line {}; give one of them another name",
                          name_of(named.kind), twin->named.line));
  }

  const std::string& file_;
  Catalogue& catalogue_;
  EntryIssues tell_;
};

}  // namespace

Catalogue read_catalogue(std::string_view text, const std::string& file) {
  Catalogue catalogue;
  const Result<Entry> document = read_document(text, file, "a catalogue");
  if (!document) {
    catalogue.issues = document.issues();
    return catalogue;
  }
  CatalogueReader(file, catalogue).read(document.value());
  return catalogue;
}

}  // namespace laywright
