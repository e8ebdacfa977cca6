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

// But where the plan has one of that name itself. A machine in braces takes no headers: there it gets braces, too.
void put_dial(PlanText& text, const DialLines& lines) {
  if (find_table(text.document(), lines.table) != nullptr) return;
  const Entry* machine = find_table(text.document(), "machine");
  if (machine == nullptr || !machine->is_inline) {
    for (const auto& [key, written] : lines.keys) text.set(lines.table, key, written);
    return;
  }
  std::string all;
  for (const auto& [key, written] : lines.keys)
    all += fmt::format("{}{} = {}", all.empty() ? "" : ", ", key, written);
  const std::size_t dot = lines.table.rfind('.');
  text.set(lines.table.substr(0, dot), lines.table.substr(dot + 1), fmt::format("{{ {} }}", all));
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
  for (const DialLines& each : lines_of(entry.dials)) put_dial(text, each);
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
