// What a plan takes over from a catalogue: it names an entry, and the entry's values stand wherever the plan has no key of
// its own.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>

#include "base/result.h"
#include "plan/dial.h"

namespace laywright {

struct FieldInfo;
struct PlanDraft;

enum class EntryKind : std::uint8_t { spool, fiber, machine };
inline constexpr std::array entry_kinds{EntryKind::spool, EntryKind::fiber, EntryKind::machine};

// "spool": of the kind, of the plan's table in which its name stands, and of the catalogue's lists.
[[nodiscard]] std::string_view name_of(EntryKind kind);

struct EntryValue {
  double value = 0.0;   // in the unit used inside, as fields.h has it
  std::string written;  // as the entry spells it, without quotes
  int line = 0;         // of the entry's file
};

struct NamedEntry {
  EntryKind kind = EntryKind::spool;
  std::string name;
  std::string file;  // where the entry stands, and its line
  int line = 0;
  std::map<std::string, EntryValue> values;  // by key path of the plan: "spool.inside_width"
  MachineDials dials{};                      // of a machine
};

// "the entry "G.652" of /home/me/fibers.toml, line 4".
[[nodiscard]] std::string place_of(const NamedEntry& entry);

// Whether an entry may have that key: of spool and fiber all of their table; of a machine what belongs to it whatever is
// wound, of the tables traverse, traverse.reversal and takeup. Pitch and stops belong to the wind. A machine may have dials and
// a counter, too; they are no fields.
[[nodiscard]] bool may_give(EntryKind kind, const FieldInfo& field);

// Where entries are looked up. Without one, as in programs that use the library alone, a plan that names an entry is an
// error that says what to do.
class EntrySource {
 public:
  EntrySource() = default;
  EntrySource(const EntrySource&) = delete;
  EntrySource& operator=(const EntrySource&) = delete;
  virtual ~EntrySource() = default;

  // Errors: there is none of that name, or it cannot be used. An issue without a file is about the name itself.
  [[nodiscard]] virtual Result<NamedEntry> find(EntryKind kind, const std::string& name) const = 0;
};

// The entries that a draft has already, for a text that was made from it. The draft must outlive it.
class EntriesOf : public EntrySource {
 public:
  explicit EntriesOf(const PlanDraft& draft) : draft_(draft) {}
  [[nodiscard]] Result<NamedEntry> find(EntryKind kind, const std::string& name) const override;

 private:
  const PlanDraft& draft_;
};

// Null where the draft names none of that kind.
[[nodiscard]] const NamedEntry* entry_of(const PlanDraft& draft, EntryKind kind);
// What the draft's entries say at that key path, and the entry that does; null where none does. The plan's own key counts
// for more: whether the value holds, the draft tells.
[[nodiscard]] const EntryValue* entry_value(const PlanDraft& draft, std::string_view path);
[[nodiscard]] const NamedEntry* giver_of(const PlanDraft& draft, std::string_view path);

}  // namespace laywright
