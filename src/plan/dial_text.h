// The dials of a machine as plan and catalogue write them:
//
//   [machine.dials.pitch]            also left_stop, right_stop, reversal, tension, line_speed, speed_ceiling
//   unit = "teeth"                   what the dial counts
//   per_unit = "0.0625 mm"           what one of it is worth; below 0 where the reading falls
//   at_zero = "0 mm"                 the value where it reads 0; optional
//   law = "proportional"             or "inverse": per_unit over the reading, as turns per inch; optional
//   step = 1                         it is set to whole steps; optional
//   least = 20                       readings it can be set to; optional
//   greatest = 120
//   [machine.dials.tension]
//   unit = "A"
//   points = [[0.1, "0.35 N"], [0.2, "0.72 N"]]   in place of per_unit and at_zero: measured, straight between
//   diameter = "60 mm"               of tension: the pull was measured on this, by a clutch that sets a torque; optional
//   [machine.dials.right_stop]
//   from = "left flange"             of the right stop: its place from there, for one scale of both stops; optional
//   [machine.counter]
//   unit = "m"
//   wheel_circumference = "200 mm"
//   counts_per_turn = 0.2            the reading goes up by so much in a turn of the wheel
//   error = "0.3 %"                  it shows more than is wound; optional
//   step = 0.1                       usually 1
#pragma once

#include <functional>
#include <string>
#include <utility>

#include "base/result.h"
#include "plan/dial.h"
#include "plan/document.h"
#include "plan/fields.h"

namespace laywright {

inline constexpr std::string_view dials_table = "machine.dials";
inline constexpr std::string_view counter_table = "machine.counter";

// Reads what stands under the key "dials" or "counter" of a machine. A dial or counter that has an issue is left out. `note`
// gets the path of each table that was read, and its line.
void read_dials(const Entry& dials, const std::string& file, MachineDials& to, Issues& issues,
                const std::function<void(const std::string& path, int line)>& note);
void read_counter(const Entry& counter, const std::string& file, MachineDials& to, Issues& issues,
                  const std::function<void(const std::string& path, int line)>& note);

// Its tables, each with the keys and literals that read back as the same.
struct DialLines {
  std::string table;  // "machine.dials.pitch"
  std::vector<std::pair<std::string, std::string>> keys;
};
[[nodiscard]] std::vector<DialLines> lines_of(const MachineDials& machine);

// All keys that these tables may have, for those who try what a plan may hold.
[[nodiscard]] std::vector<std::string> dial_keys();

// The field of the plan that a dial sets, or null where there is no such dial.
[[nodiscard]] const FieldInfo* field_of_dial(std::string_view name);

}  // namespace laywright
