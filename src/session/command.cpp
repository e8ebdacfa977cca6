#include "session/command.h"

#include "session/reasons.h"
#include "session/workbench.h"

namespace laywright {

Command::Command(Parts parts) : parts_(std::make_shared<const Parts>(std::move(parts))) {}

std::string Command::why_lacking(const Workbench& bench) const {
  const Needs needs = parts_->needs;
  if (needs != Needs::nothing && bench.active() == nullptr) return reason::no_plan;
  if (!parts_->in_lesson && bench.lesson()) return reason::in_lesson;
  if (needs == Needs::build && !bench.wound_in_hand()) return reason::not_laid;
  if (needs == Needs::active_build && !bench.wound()) return reason::not_laid;
  return "";
}

std::string Command::why_not(const Workbench& bench) const {
  if (std::string why = why_lacking(bench); !why.empty()) return why;
  return parts_->why_not ? parts_->why_not(bench) : "";
}

bool Command::is_on(const View& view) const { return parts_->is_on && parts_->is_on(view); }

std::string Command::label(const Workbench& bench) const {
  return parts_->label && why_lacking(bench).empty() ? parts_->label(bench) : "";
}

}  // namespace laywright
