// What a person says of a wind that is begun anew, as they type it, and the draft of a plan that it makes.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

// Quantities are read as typed_quantity.h says. Empty: not said.
struct NewRequest {
  std::string title;
  std::string spool;    // name of an entry, or sizes: "63 x 100 x 80 mm", barrel, flange, inside width
  std::string fiber;    // name of an entry, or its diameter
  std::string machine;  // name of an entry
  std::string length;
  std::string friction, free_length, tension, line_speed;
  std::vector<std::pair<std::string, std::string>>
      set;  // other keys of the plan, "traverse.reversal.turns", and their values

  [[nodiscard]] bool operator==(const NewRequest&) const = default;
};

struct NewDraft {
  PlanDraft draft;                 // not checked, and without pitch and stops unless they were said
  std::vector<std::string> given;  // key paths that the person or the machine's entry settles
  std::set<std::string> assumed;   // key paths that a usual value stands in for
};

// Where neither the person nor an entry says it.
inline constexpr double usual_friction = 0.5;         // of coated fiber and enamelled wire on itself; no source
inline constexpr double usual_free_length_mm = 50.0;  // a guide near the spool; common practice, no source

// Errors, each with what was said as its key ("spool") and value: spool, fiber or length missing, names that no catalogue has,
// values that cannot be read.
[[nodiscard]] Result<NewDraft> draft_of(const NewRequest& request, const EntrySource& entries);

// What is wrong with one answer; none: nothing. `what`: "spool", "fiber", "machine", "length", "friction", "free_length".
[[nodiscard]] std::optional<Issue> wrong_with(const std::string& what, const std::string& answer,
                                              const EntrySource& entries);

}  // namespace laywright
