// What each field of a plan is called and what it does, for somebody in their first week.
#pragma once

#include <string_view>

namespace laywright {

struct FieldHelp {
  std::string_view name;         // "pitch"
  std::string_view explanation;  // one sentence
};

// `path` of a field in plan_fields(), step_fields() or order_fields() ("traverse.pitch", "wind.step.pitch"). Every field has one;
// empty for another path.
[[nodiscard]] FieldHelp help_for(std::string_view path);

// "[traverse.reversal]" as a person reads it: "Reversal". Empty for what is no table of a plan.
[[nodiscard]] std::string_view table_title(std::string_view table);

}  // namespace laywright
