#include "session/compare_commands.h"

#include <utility>

#include <fmt/format.h>

#include "session/bench_inside.h"
#include "session/command_rows.h"
#include "session/reasons.h"
#include "session/window_commands.h"

namespace laywright {
namespace {

std::string nothing_compared(const Workbench& bench) { return bench.comparison() ? "" : "Nothing is compared."; }

std::string moved_together(const Workbench& bench) {
  if (!bench.comparison()) return nothing_compared(bench);
  return bench.comparison()->linked ? "The two pictures move together: unlink them first, with Shift+K." : "";
}

std::string why_not_with(const Workbench& bench, std::size_t document) {
  if (document >= bench.documents().size()) return reason::not_open;
  return document == bench.active_index()
             ? "That is the plan that is shown: choose another one, or keep this build with K."
             : "";
}

void pin(const BenchInside& in) {
  Comparison comparison;
  comparison.name = fmt::format("{}, kept", in.document().name());
  comparison.pinned = in.document().wound();
  comparison.stage = in.desk().stage;
  in.comparison = std::move(comparison);
}

void compare(const BenchInside& in, std::size_t document) {
  in.question.reset();
  const Desk& other = in.desks[document];
  Comparison comparison;
  comparison.name = other.document->name();
  comparison.document = other.id;
  comparison.stage = other.stage;
  comparison.stage.view.width_px = in.desk().stage.view.width_px;
  comparison.stage.view.height_px = in.desk().stage.view.height_px;
  in.comparison = std::move(comparison);
}

void link_or_not(const BenchInside& in) {
  Comparison& comparison = *in.comparison;
  if (comparison.linked) comparison.stage = in.bench.other_stage();  // it goes on from where it is
  comparison.linked = !comparison.linked;
  comparison.in_hand = false;
}

}  // namespace

Command cmd::pin_build() {
  return {{.name = "pin build", .needs = Needs::active_build, .in_lesson = false, .act = pin}};
}

Command cmd::compare_with(std::size_t document) {
  return {{.name = fmt::format("compare with {}", document),
           .in_lesson = false,
           .why_not = [document](const Workbench& bench) { return why_not_with(bench, document); },
           .act = [document](const BenchInside& in) { compare(in, document); }}};
}

Command cmd::stop_comparing() {
  return {
      {.name = "stop comparing", .in_lesson = false, .why_not = nothing_compared, .act = [](const BenchInside& in) {
         in.comparison.reset();
       }}};
}

Command cmd::toggle_linked() {
  return {{.name = "toggle linked", .in_lesson = false, .why_not = nothing_compared, .act = link_or_not}};
}

Command cmd::take_in_hand(std::optional<bool> other) {
  return {
      {.name = !other   ? "take the one not in hand"
               : *other ? "take the other"
                        : "take the active one",
       .why_not = moved_together,
       .act = [other](const BenchInside& in) { in.comparison->in_hand = other.value_or(!in.comparison->in_hand); }}};
}

CommandRows compare_rows() {
  using namespace cmd;
  return {
      {"Compare", "Keep this build", "K", "Keep this build beside what comes next.", pin_build()},
      {"Compare", "Compare with...", "Ctrl+K", "Show another open plan beside this one.",
       ask(cmd::Question::what_to_compare)},
      {"Compare", "Link the two views", "Shift+K", "Move both together, or each alone.", toggle_linked()},
      {"Compare", "Take the other in hand", "H",
       "Of two pictures that move alone, the one that keys and panels are for.", take_in_hand()},
      {"Compare", "Stop comparing", "", "Show one build alone.", stop_comparing()},
  };
}

}  // namespace laywright
