#include "plan/named_entry.h"

#include <algorithm>

#include <fmt/format.h>

#include "plan/fields.h"
#include "plan/lay_plan.h"

namespace laywright {

std::string_view name_of(EntryKind kind) {
  switch (kind) {
    case EntryKind::spool: return "spool";
    case EntryKind::fiber: return "fiber";
    case EntryKind::machine: return "machine";
  }
  return "";
}

std::string place_of(const NamedEntry& entry) {
  return fmt::format("the entry \"{}\" of {}, line {}", entry.name, entry.file, entry.line);
}

bool may_give(EntryKind kind, const FieldInfo& field) {
  if (kind != EntryKind::machine) return field.table == name_of(kind);
  constexpr std::string_view of_the_wind[] = {"pitch", "left_stop", "right_stop"};
  const bool wound = std::find(std::begin(of_the_wind), std::end(of_the_wind), field.key) != std::end(of_the_wind);
  return field.table == "takeup" || field.table == "traverse.reversal" || (field.table == "traverse" && !wound);
}

Result<NamedEntry> EntriesOf::find(EntryKind kind, const std::string& name) const {
  const NamedEntry* entry = entry_of(draft_, kind);
  if (entry != nullptr && entry->name == name) return *entry;
  Issue issue;
  issue.what = "is not the entry that the plan was read with";
  return issue;
}

const NamedEntry* entry_of(const PlanDraft& draft, EntryKind kind) {
  const auto found = std::find_if(draft.entries.begin(), draft.entries.end(),
                                  [&](const NamedEntry& entry) { return entry.kind == kind; });
  return found == draft.entries.end() ? nullptr : &*found;
}

const NamedEntry* giver_of(const PlanDraft& draft, std::string_view path) {
  const auto found = std::find_if(draft.entries.begin(), draft.entries.end(), [&](const NamedEntry& entry) {
    return entry.values.count(std::string(path)) > 0;
  });
  return found == draft.entries.end() ? nullptr : &*found;
}

const EntryValue* entry_value(const PlanDraft& draft, std::string_view path) {
  const NamedEntry* giver = giver_of(draft, path);
  return giver == nullptr ? nullptr : &giver->values.find(std::string(path))->second;
}

}  // namespace laywright
