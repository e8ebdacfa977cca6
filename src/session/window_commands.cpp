#include "session/window_commands.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "session/bench_inside.h"
#include "session/command_rows.h"
#include "session/reasons.h"

namespace laywright {
namespace {

using cmd::Question;

template <class... Questions>
bool is_one_of(Question question, Questions... among) {
  return ((question == among) || ...);
}

std::string nothing_to_compare(const Workbench& bench) {
  if (bench.documents().size() >= 2) return "";
  if (bench.comparison()) return "Two builds are compared already; for another one, open its plan.";
  return "There is no other plan to compare with: open one, or keep this build with K and change its plan.";
}

std::string why_not_ask(const Workbench& bench, Question q) {
  const bool of_sheet = is_one_of(q, Question::setup_sheet, Question::sheet_to_save);
  const bool of_page = is_one_of(q, Question::share_page, Question::page_to_save);
  const bool of_plan = is_one_of(q, Question::file_to_save, Question::close_unsaved, Question::better_settings) ||
                       is_one_of(q, Question::readings_to_open, Question::readings_to_save) || of_sheet || of_page;
  if (of_plan && bench.active() == nullptr) return reason::no_plan;
  if (q == Question::order && bench.order().file().empty()) return reason::no_order;
  if (q == Question::order_folder) return why_not_write_order(bench);
  if (of_sheet && !bench.wound()) return reason::not_laid;
  if (of_page && !bench.options().make_page) return why_no_page(bench);
  const bool breaks = is_one_of(q, Question::file_to_save, Question::what_to_compare);
  if (breaks && bench.lesson()) return reason::in_lesson;
  return q == Question::what_to_compare ? nothing_to_compare(bench) : "";
}

void put_question(const BenchInside& in, Question question) {
  if (question == Question::setup_sheet && in.question != Question::sheet_to_save) in.forget_sheet_saving();
  if (question == Question::share_page && in.question != Question::page_to_save) in.forget_page_saving();
  if (question == Question::new_plan) in.beginning.forget();
  if (question == Question::records) in.records.begin(in.settings.records);
  in.question = question;
}

constexpr const char* words_of(Question question) {
  switch (question) {
    case Question::file_to_open: return "file to open";
    case Question::file_to_save: return "file to save";
    case Question::what_to_compare: return "what to compare";
    case Question::close_unsaved: return "close unsaved";
    case Question::help: return "help";
    case Question::setup_sheet: return "set-up sheet";
    case Question::sheet_to_save: return "sheet to save";
    case Question::better_settings: return "better settings";
    case Question::share_page: return "share page";
    case Question::page_to_save: return "page to save";
    case Question::new_plan: return "new plan";
    case Question::readings_to_open: return "readings to open";
    case Question::readings_to_save: return "readings to save";
    case Question::records: return "records";
    case Question::order: return "order";
    case Question::order_to_open: return "order to open";
    case Question::order_folder: return "order folder";
  }
  return "";
}

}  // namespace

Command cmd::ask(Question question) {
  return {{.name = fmt::format("ask: {}", words_of(question)),
           .needs = Needs::nothing,
           .why_not = [question](const Workbench& bench) { return why_not_ask(bench, question); },
           .act = [question](const BenchInside& in) { put_question(in, question); }}};
}

Command cmd::answered() {
  return {{.name = "answered", .needs = Needs::nothing, .act = [](const BenchInside& in) { in.question.reset(); }}};
}

Command cmd::dismiss_notice(std::size_t index) {
  return {
      {.name = fmt::format("dismiss notice {}", index),
       .needs = Needs::nothing,
       .why_not =
           [index](const Workbench& bench) { return index < bench.notices().size() ? "" : "That notice is gone."; },
       .act =
           [index](const BenchInside& in) {
             in.notices.erase(in.notices.begin() + static_cast<std::ptrdiff_t>(index));
           }}};
}

Command cmd::set_scale(double scale) {
  return {{.name = "set scale", .needs = Needs::nothing, .act = [scale](const BenchInside& in) {
             if (!std::isfinite(scale)) return false;
             in.settings.scale = std::clamp(scale, Settings::smallest_scale, Settings::largest_scale);
             return true;
           }}};
}

CommandRows help_rows() {
  using namespace cmd;
  return {{"Help", "Keys and commands", "F1", "List everything that can be done, with its key.",
           ask(cmd::Question::help), Also::while_typing}};
}

}  // namespace laywright
