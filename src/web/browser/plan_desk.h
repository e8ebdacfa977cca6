// The plan of the page: as it came, and as the person has changed it.
#pragma once

#include <optional>
#include <string>

#include <nlohmann/json.hpp>

#include "desk/plan_state.h"
#include "scene/view.h"

namespace laywright {

class PlanDesk {
 public:
  using Json = nlohmann::json;

  // Throws std::runtime_error when it is not the text of a plan.
  explicit PlanDesk(std::string text);

  // `unit`: that of a number alone; null for the field's own.
  void change(const std::string& path, const std::string& typed, const Unit* unit);
  void revert() { state_ = original_; }

  // The fields that the page offers, [{path, name, help, text, unit, allowed, choices, changed, issues}], and what is
  // wrong beside them, {fields, others, sound, changed}.
  [[nodiscard]] Json fields(Units units) const;

  // What is typed there one step more or less, as the window steps it; none where it cannot be stepped.
  [[nodiscard]] std::optional<std::string> stepped(const std::string& path, const std::string& typed, double steps,
                                                   Units units) const;

  // The plan as it stands now; comments and order as they came.
  [[nodiscard]] std::string text() const;
  [[nodiscard]] const PlanDraft& draft() const { return state_.draft; }

 private:
  std::string text_;
  PlanState original_, state_;
};

}  // namespace laywright
