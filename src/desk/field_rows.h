// The fields of a plan as rows of a form: value, unit, range, explanation, and what is wrong with it.
#pragma once

#include <string>
#include <vector>

#include "desk/field_help.h"
#include "desk/plan_state.h"
#include "scene/view.h"

namespace laywright {

struct FieldRow {
  std::string path;       // for edits: "traverse.pitch", "wind.step[0].pitch"
  std::string table;      // "traverse", "wind.step[0]"
  const FieldInfo* info;  // its kind, choices; static storage
  FieldHelp help;
  std::optional<double> value;  // in the unit used inside; a choice's index; infinity for "held"
  std::string text;         // as a person reads and edits it, without the unit; what was typed where it is unread
  const Unit* unit;         // shown beside it; null where there is none
  std::string allowed;      // "above 0 mm, up to 10000 mm"
  bool is_default = false;  // not set by the person
  std::string idle;         // why it does nothing now: "only a stepped guide has one"; empty: it counts
  std::string
      dialled;  // where the machine has a dial for it: "Dialled 41 teeth", and "= 0.25625 mm" below where that is not what stands in the field
  Issues issues;  // about this field
};

// The unit in which a field is shown: as it was written where that is of the wanted system, or else the system's
// usual one. Null for fields without a unit.
[[nodiscard]] const Unit* unit_shown(const FieldInfo& field, std::string_view written, Units units);

// In the order of the plan: its fields, then those of each step. A value in the unit in which it was written is shown
// as written; in another one in four digits, or as many as stand before its point. `issues`: of the state.
[[nodiscard]] std::vector<FieldRow> field_rows(const PlanState& state, const Issues& issues, Units units);

// Issues that belong to no field: of the file, of a table, of unknown keys.
[[nodiscard]] Issues other_issues(const PlanState& state, const Issues& issues);

}  // namespace laywright
