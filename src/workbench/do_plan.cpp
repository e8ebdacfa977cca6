// Commands that change a plan, or lay it.
#include <fmt/format.h>

#include "workbench/doer.h"

namespace laywright {
namespace {

// Fields of a step have the same names as those of the traverse.
std::string edit_name(const FieldInfo& field) { return std::string(help_for(field.path()).name); }

}  // namespace

bool Workbench::Doer::operator()(const cmd::SetField& c) const {
  const FieldInfo& field = *field_at(state().draft, c.path);
  document().edit(with_value(state(), c.path, c.value), edit_name(field), c.gesture);
  return true;
}

bool Workbench::Doer::operator()(const cmd::TypeField& c) const {
  const FieldInfo& field = *field_at(state().draft, c.path);
  const auto origin = state().draft.origins.find(c.path);
  const std::string written = origin == state().draft.origins.end() ? "" : origin->second.written;
  const Unit* unit = unit_shown(field, written, view().units);
  document().edit(with_text(state(), c.path, c.text, unit), edit_name(field), c.gesture);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetTitle& c) const {
  document().edit(with_title(state(), c.title), "title", c.gesture);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetNotes& c) const {
  document().edit(with_notes(state(), c.notes), "notes", c.gesture);
  return true;
}

bool Workbench::Doer::operator()(const cmd::AddStep&) const {
  document().edit(with_step_added(state()), "new step");
  return true;
}

bool Workbench::Doer::operator()(const cmd::RemoveStep& c) const {
  document().edit(with_step_removed(state(), c.index), "step removed");
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetTakeup& c) const {
  document().edit(with_takeup(state(), c.has_one), c.has_one ? "take-up" : "no take-up");
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetWindEnd& c) const {
  const bool current = document().wound_is_current();
  const Wound* laid = current ? document().wound().get() : nullptr;
  document().edit(with_wind_end(state(), c.end, laid), fmt::format("wind by {}", name_of(c.end)));
  return true;
}

bool Workbench::Doer::operator()(const cmd::LeaveOutUnknown&) const {
  document().edit(without_unknown(state()), "unknown keys left out");
  return true;
}

bool Workbench::Doer::operator()(const cmd::Undo&) const {
  document().undo();
  return true;
}

bool Workbench::Doer::operator()(const cmd::Redo&) const {
  document().redo();
  return true;
}

bool Workbench::Doer::operator()(const cmd::StopLaying&) const {
  // What is being laid is wanted back first; then what is searched for.
  document().laying().busy ? document().stop_laying() : advice().stop_all();
  return true;
}

bool Workbench::Doer::operator()(const cmd::LayAgain&) const {
  document().lay_again();
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetSeed& c) const {
  document().set_seed(c.seed);
  return true;
}

bool Workbench::Doer::operator()(const cmd::NextSeed&) const {
  document().set_seed(document().seed() + 1);
  return true;
}

}  // namespace laywright
