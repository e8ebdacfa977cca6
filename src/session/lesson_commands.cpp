#include "session/lesson_commands.h"

#include <fmt/format.h>

#include "session/bench_inside.h"
#include "session/command_rows.h"

namespace laywright {
namespace {

std::string no_lesson(const Workbench& bench) {
  return bench.lesson() ? "" : "No lesson is open: choose one from the Learn menu.";
}

std::string no_such_step(const Workbench& bench, int by) {
  if (!bench.lesson()) return no_lesson(bench);
  const auto steps = static_cast<int>(bench.lesson()->lesson->steps.size());
  const int to = static_cast<int>(bench.lesson()->step) + by;
  if (to < 0) return "This is the first step.";
  return to < steps ? "" : "This is the last step.";
}

std::string why_not_answer(const Workbench& bench, std::size_t answer) {
  if (!bench.lesson()) return no_lesson(bench);
  const LessonRun& run = *bench.lesson();
  if (!run.now().question || answer >= run.now().question->answers.size()) return "There is no such answer.";
  return run.answer() ? "The question is answered already: the first answer counts." : "";
}

void give_answer(const BenchInside& in, std::size_t answer) {
  const bool was_hidden = outcome_hidden(*in.lesson);
  in.lesson->answers[in.lesson->step] = answer;
  if (was_hidden) in.show_step_again();
}

void begin_anew(const BenchInside& in) {
  in.lesson->answers.assign(in.lesson->answers.size(), std::nullopt);
  in.go_to_step(0);
}

std::string why_not_look(const Workbench& bench, bool afar) {
  if (!bench.lesson()) return no_lesson(bench);
  if (!looks_from_near(*bench.lesson())) return "This step shows whole spools.";
  if (bench.lesson()->from_afar != afar) return "";
  return afar ? "Whole spools are shown." : "It is looked at from near.";
}

std::string nothing_tried(const Workbench& bench) {
  if (!bench.lesson()) return no_lesson(bench);
  return bench.active()->document->as_given() ? "Nothing has been changed." : "";
}

}  // namespace

Command cmd::open_lesson(const std::string& file) {
  return {{.name = "open lesson " + file, .needs = Needs::nothing, .act = [file](const BenchInside& in) {
             in.question.reset();
             return in.open(file);
           }}};
}

Command cmd::go_in_lesson(int steps) {
  return {{.name = fmt::format("go {} steps in the lesson", steps),
           .needs = Needs::nothing,
           .why_not = [steps](const Workbench& bench) { return no_such_step(bench, steps); },
           .act =
               [steps](const BenchInside& in) {
                 in.go_to_step(static_cast<std::size_t>(static_cast<int>(in.lesson->step) + steps));
               }}};
}

Command cmd::answer_lesson(std::size_t answer) {
  return {{.name = fmt::format("answer {}", answer),
           .needs = Needs::nothing,
           .why_not = [answer](const Workbench& bench) { return why_not_answer(bench, answer); },
           .act = [answer](const BenchInside& in) { give_answer(in, answer); }}};
}

Command cmd::show_step_again() {
  return {{.name = "show the step again",
           .needs = Needs::nothing,
           .why_not = no_lesson,
           .act = [](const BenchInside& in) { in.show_step_again(); }}};
}

Command cmd::look_from_afar(bool afar) {
  return {{.name = "look from afar",
           .needs = Needs::nothing,
           .why_not = [afar](const Workbench& bench) { return why_not_look(bench, afar); },
           .act = [afar](const BenchInside& in) { in.look_from_afar(afar); }}};
}

Command cmd::take_try_back() {
  return {{.name = "take the try back",
           .needs = Needs::nothing,
           .why_not = nothing_tried,
           .act = [](const BenchInside& in) { in.document().begin_again(); }}};
}

Command cmd::restart_lesson() {
  return {{.name = "restart the lesson", .needs = Needs::nothing, .why_not = no_lesson, .act = begin_anew}};
}

Command cmd::close_lesson() {
  return {
      {.name = "close the lesson", .needs = Needs::nothing, .why_not = no_lesson, .act = [](const BenchInside& in) {
         in.close_lesson();
       }}};
}

CommandRows lesson_rows() {
  using namespace cmd;
  return {
      {"Learn", "Start the lesson again", "", "Go back to the first step, and forget the answers.",
       restart_lesson()},
      {"Learn", "Leave the lesson", "", "Close the lesson and go back to the plans that are open.", close_lesson()},
  };
}

}  // namespace laywright
