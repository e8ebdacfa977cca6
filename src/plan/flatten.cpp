#include "plan/flatten.h"

#include <filesystem>

#include <fmt/format.h>

#include "base/readable.h"
#include "plan/dial_text.h"
#include "plan/fields.h"

namespace laywright {
namespace {

std::string literal_of(const FieldInfo& field, const std::string& written) {
  return in_quotes(field, written) ? toml_text(written) : written;
}

}  // namespace

void write_in(PlanText& text, const NamedEntry& entry) {
  const std::string table(name_of(entry.kind));
  const std::string file = std::filesystem::path(entry.file).filename().string();
  text.put_comment_for(table, "name",
                       readable(fmt::format("{} of the catalogue {}, line {}", entry.name, file, entry.line), 150));
  for (const auto& field : plan_fields()) {
    const auto given = entry.values.find(field.path());
    const std::string field_table(field.table);
    if (given == entry.values.end() || text.find(field_table, field.key) != nullptr) continue;
    text.set(field_table, field.key, literal_of(field, given->second.written));
  }
  for (const DialLines& each : lines_of(entry.dials)) {
    if (find_table(text.document(), each.table) != nullptr) continue;  // the plan's own
    for (const auto& [key, written] : each.keys) text.set(each.table, key, written);
  }
}

std::string flattened(std::string_view text, const PlanDraft& draft) {
  PlanText edited(text);
  for (const NamedEntry& entry : draft.entries) write_in(edited, entry);
  return edited.text();
}

PlanDraft without_entries(PlanDraft draft) {
  draft.entries.clear();
  return draft;
}

}  // namespace laywright
