#include "advise/setting_text.h"

#include <algorithm>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "base/number.h"
#include "base/text_distance.h"
#include "lay/lay.h"
#include "plan/mixed_colour.h"
#include "plan/plan_values.h"

namespace laywright {
Issue option_issue(std::string_view key, std::string_view value, std::string what, std::string allowed) {
  Issue issue;
  issue.key = key;
  issue.value = value;
  issue.what = std::move(what);
  issue.allowed = std::move(allowed);
  return issue;
}

Result<double> read_setting(const PlanDraft& draft, std::string_view path, std::string_view text) {
  const FieldInfo* field = field_at(draft, path);
  if (field == nullptr) {
    std::vector<std::string> known;
    for (const auto& each : plan_fields()) known.push_back(each.path());
    const std::string nearest = nearest_word(path, known);
    return option_issue(path, "",
                        nearest.empty() ? std::string("is no key of a plan; keys are like traverse.pitch")
                                        : fmt::format("is no key of a plan; did you mean {}?", nearest));
  }
  if (field->kind == FieldKind::quantity) {
    const ParsedQuantity parsed = parse_quantity(text, field->dimension);
    if (!parsed.quantity) return option_issue(path, text, parsed.problem);
    return parsed.quantity->value;
  }
  if (field->kind == FieldKind::choice) {
    const std::optional<double> chosen = choice_written(*field, text);
    if (!chosen) return option_issue(path, text, "is no choice", allowed_text(*field));
    return *chosen;
  }
  if (field->kind == FieldKind::friction && text == "held") return Fiber::held;
  const std::optional<double> number = read_number<double>(text);
  if (!number) return option_issue(path, text, "is not a number", allowed_text(*field));
  return *number;
}

Issue stopped() { return option_issue("", "", stopped_text); }

}  // namespace laywright
