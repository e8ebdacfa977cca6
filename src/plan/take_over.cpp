#include "plan/take_over.h"

#include <fmt/format.h>

#include "plan/dial_text.h"
#include "plan/fields.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

Result<NamedEntry> look_up(EntryKind kind, const std::string& name, const EntrySource* entries) {
  if (entries != nullptr) return entries->find(kind, name);
  Issue issue;
  issue.what =
      "names an entry of a catalogue, and here is none; write its values into the plan with: laywright check "
      "--flatten";
  return issue;
}

// A dial of the plan's own stands in place of the entry's whole one: half of each would be a dial that nobody measured.
void take_over_dials(PlanDraft& draft, const MachineDials& given, int line) {
  for (const DialLines& each : lines_of(given)) {
    if (draft.origins.count(each.table) == 0) draft.origins[each.table] = {line, ""};
  }
  draft.machine.dials.insert(given.dials.begin(), given.dials.end());
  if (!draft.machine.counter) draft.machine.counter = given.counter;
}

}  // namespace

Issues take_over(DraftReading& reading, EntryKind kind, const std::string& name, int line,
                 const EntrySource* entries) {
  PlanDraft& draft = reading.draft;
  const Result<NamedEntry> found = look_up(kind, name, entries);
  for (const auto& field : plan_fields()) {
    const std::string path = field.path();
    const bool own = draft.origins.count(path) > 0 || reading.unread.count(path) > 0;
    if (own || !may_give(kind, field)) continue;
    if (!found.ok()) {
      reading.unread.insert(path);
      continue;
    }
    const auto given = found.value().values.find(path);
    if (given == found.value().values.end()) continue;
    field.set(draft, given->second.value);
    draft.origins[path] = {line, given->second.written};
  }
  if (found.ok()) {
    take_over_dials(draft, found.value().dials, line);
    draft.entries.push_back(found.value());
  }
  return found.issues();
}

std::string silent_entries(const PlanDraft& draft, const std::string& path) {
  const FieldInfo* field = field_at(draft, path);
  if (field == nullptr) return "";
  std::string text;
  for (const NamedEntry& entry : draft.entries) {
    if (may_give(entry.kind, *field)) text += fmt::format("; {} does not tell it", place_of(entry));
  }
  return text;
}

}  // namespace laywright
