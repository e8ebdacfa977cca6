#include "session/plan_commands.h"

#include <cmath>

#include <fmt/format.h>

#include "desk/field_help.h"
#include "session/advice_commands.h"
#include "session/bench_inside.h"
#include "session/command_rows.h"
#include "session/follow_commands.h"
#include "session/reasons.h"
#include "session/window_commands.h"

namespace laywright {
namespace {

// Fields of a step have the same names as those of the traverse.
std::string edit_name(const FieldInfo& field) { return std::string(help_for(field.path()).name); }

std::string no_such_field(const Workbench& bench, const std::string& path) {
  if (field_at(document_of(bench).state().draft, path) != nullptr) return "";
  return fmt::format("The plan has no field {}.", path);
}

void type_into(const BenchInside& in, const std::string& path, const std::string& text, std::uint64_t gesture) {
  const PlanDraft& draft = in.state().draft;
  const FieldInfo& field = *field_at(draft, path);
  const auto origin = draft.origins.find(path);
  const std::string written = origin == draft.origins.end() ? "" : origin->second.written;
  const Unit* unit = unit_shown(field, written, in.view().units);
  in.document().edit(with_text(in.state(), path, text, unit), edit_name(field), gesture);
}

std::string undo_label(const Workbench& bench) {
  const History<PlanState>& history = document_of(bench).history();
  return history.can_undo() ? fmt::format("Undo: {}", history.undo_name()) : "";
}

std::string redo_label(const Workbench& bench) {
  const History<PlanState>& history = document_of(bench).history();
  return history.can_redo() ? fmt::format("Redo: {}", history.redo_name()) : "";
}

// What is being laid is wanted back first; then what is searched for.
void stop_what_is_done(const BenchInside& in) {
  in.document().laying().busy ? in.document().stop_laying() : in.advice().stop_all();
}

std::string nothing_scatters(const Workbench& bench) {
  if (!scatters(document_of(bench).state().draft)) {
    return "Nothing in this plan scatters: give it a scatter of pitch, stop or diameter, or a guide play, first.";
  }
  return why_not_sound(bench);
}

}  // namespace

Command cmd::set_field(const std::string& path, std::optional<double> value, std::uint64_t gesture) {
  return {{.name = "set field " + path,
           .why_not = [path, value](const Workbench& bench) -> std::string {
             if (value && std::isnan(*value)) return "That is not a number.";
             return no_such_field(bench, path);
           },
           .act =
               [path, value, gesture](const BenchInside& in) {
                 const std::string name = edit_name(*field_at(in.state().draft, path));
                 in.document().edit(with_value(in.state(), path, value), name, gesture);
               }}};
}

Command cmd::type_field(const std::string& path, const std::string& text, std::uint64_t gesture) {
  return {{.name = "type field " + path,
           .why_not = [path](const Workbench& bench) { return no_such_field(bench, path); },
           .act = [path, text, gesture](const BenchInside& in) { type_into(in, path, text, gesture); }}};
}

Command cmd::set_title(const std::string& title, std::uint64_t gesture) {
  return {{.name = "set title", .act = [title, gesture](const BenchInside& in) {
             in.document().edit(with_title(in.state(), title), "title", gesture);
           }}};
}

Command cmd::set_notes(const std::string& notes, std::uint64_t gesture) {
  return {{.name = "set notes", .act = [notes, gesture](const BenchInside& in) {
             in.document().edit(with_notes(in.state(), notes), "notes", gesture);
           }}};
}

Command cmd::set_order_text(const OrderField& field, const std::string& text, std::uint64_t gesture) {
  return {{.name = "set " + field.path(), .act = [field, text, gesture](const BenchInside& in) {
             in.document().edit(with_order_text(in.state(), field, text), std::string(help_for(field.path()).name),
                                gesture);
           }}};
}

Command cmd::add_step() {
  return {{.name = "add step",
           .act = [](const BenchInside& in) { in.document().edit(with_step_added(in.state()), "new step"); }}};
}

Command cmd::remove_step(std::size_t index) {
  return {{.name = fmt::format("remove step {}", index),
           .why_not =
               [index](const Workbench& bench) {
                 const std::size_t steps = document_of(bench).state().draft.wind.steps.size();
                 return index < steps ? "" : "The plan has no such step.";
               },
           .act =
               [index](const BenchInside& in) {
                 in.document().edit(with_step_removed(in.state(), index), "step removed");
               }}};
}

Command cmd::set_takeup(bool has_one) {
  return {{.name = has_one ? "take-up" : "no take-up", .act = [has_one](const BenchInside& in) {
             in.document().edit(with_takeup(in.state(), has_one), has_one ? "take-up" : "no take-up");
           }}};
}

Command cmd::set_wind_end(WindEnd end) {
  return {{.name = fmt::format("wind by {}", name_of(end)), .act = [end](const BenchInside& in) {
             const Wound* laid = in.document().wound_is_current() ? in.document().wound().get() : nullptr;
             in.document().edit(with_wind_end(in.state(), end, laid), fmt::format("wind by {}", name_of(end)));
           }}};
}

Command cmd::leave_out_unknown() {
  return {
      {.name = "leave out unknown",
       .why_not =
           [](const Workbench& bench) {
             return unknown_in(document_of(bench).state()).empty() ? "The plan has no unknown keys." : "";
           },
       .act =
           [](const BenchInside& in) { in.document().edit(without_unknown(in.state()), "unknown keys left out"); }}};
}

Command cmd::undo() {
  return {{.name = "undo",
           .why_not =
               [](const Workbench& bench) {
                 return document_of(bench).history().can_undo() ? "" : "There is nothing to undo.";
               },
           .act = [](const BenchInside& in) { in.document().undo(); },
           .label = undo_label}};
}

Command cmd::redo() {
  return {{.name = "redo",
           .why_not =
               [](const Workbench& bench) {
                 return document_of(bench).history().can_redo() ? "" : "There is nothing to redo.";
               },
           .act = [](const BenchInside& in) { in.document().redo(); },
           .label = redo_label}};
}

Command cmd::stop_laying() {
  return {{.name = "stop laying",
           .why_not =
               [](const Workbench& bench) {
                 const bool busy = document_of(bench).laying().busy || bench.active()->advice->busy();
                 return busy ? "" : "Nothing is being laid or searched for.";
               },
           .act = stop_what_is_done}};
}

Command cmd::lay_again() {
  return {{.name = "lay again", .why_not = why_not_sound, .act = [](const BenchInside& in) {
             in.document().lay_again();
           }}};
}

Command cmd::set_seed(std::uint64_t seed) {
  return {{.name = fmt::format("set seed {}", seed),
           .act = [seed](const BenchInside& in) { in.document().set_seed(seed); }}};
}

Command cmd::next_seed() {
  return {{.name = "next seed", .why_not = nothing_scatters, .act = [](const BenchInside& in) {
             in.document().set_seed(in.document().seed() + 1);
           }}};
}

CommandRows edit_rows() {
  using namespace cmd;
  return {
      {"Edit", "Undo", "Ctrl+Z", "Take the last edit of the plan back.", undo()},
      {"Edit", "Redo", "Ctrl+Y", "Do again what was undone.", redo()},
      {"Edit", "Add a step", "", "Change pitch or stops from a layer on.", add_step()},
      {"Edit", "Leave out unknown keys", "", "Drop what the file has that is no part of a plan.",
       leave_out_unknown()},
  };
}

CommandRows build_rows() {
  using namespace cmd;
  return {
      {"Build", "Stop laying", "Escape", "Stop laying the plan, or what is searched for; what is shown stays.",
       stop_laying()},
      {"Build", "Lay again", "F5", "Lay the plan once more.", lay_again()},
      {"Build", "Better settings...", "Ctrl+B", "Search for settings that wind better, and see what they cost.",
       ask(cmd::Question::better_settings), Also::while_typing},
      {"Build", "Follow the wind", "Ctrl+Shift+F",
       "Hold what was read on the spool that is being wound against the plan.", follow_wind(), Also::while_typing},
      {"Build", "Open readings...", "", "Open a table of what was read on the spool.",
       ask(cmd::Question::readings_to_open)},
      {"Build", "Save readings...", "", "Save what was read on the spool as a table.",
       ask(cmd::Question::readings_to_save)},
      {"Build", "Judge over draws", "",
       "Judge by the worst of several winds: other seeds, fiber within its tolerance.", judge_draws()},
      {"Build", "Next seed", "Shift+F5", "Draw the scatter of pitch and stops anew.", next_seed()},
  };
}

}  // namespace laywright
