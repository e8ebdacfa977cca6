#include "session/follow_commands.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/atomic_file.h"
#include "desk/plan_state.h"
#include "session/bench_inside.h"
#include "session/reasons.h"

namespace laywright {
namespace {

const Desk& desk_of(const Workbench& bench) { return *bench.active(); }

std::string why_no_readings(const Workbench& bench) {
  const TypedReadings& typed = desk_of(bench).readings;
  const bool any = std::any_of(typed.begin(), typed.end(), [](const TypedRow& row) { return !row.empty(); });
  return any ? "" : "Nothing was read yet: type readings in the tab Follow (Ctrl+F), or open a table of them.";
}

std::string why_not_follow(const Workbench& bench) {
  if (std::string why = why_not_sound(bench); !why.empty()) return why;
  if (std::string why = why_no_readings(bench); !why.empty()) return why;
  const Result<AsWound> read =
      read_typed(desk_of(bench).readings, check(desk_of(bench).document->state().draft).value());
  return read.ok() ? "" : typed_trouble(desk_of(bench).readings, read.issues().front());
}

void follow_now(const BenchInside& in) {
  const Plan plan = check(in.state().draft).value();
  in.advice().ask_follow(plan, in.document().seed(), in.desk().readings,
                         read_typed(in.desk().readings, plan).value());
}

const Forecast* forecast_in(const Workbench& bench, bool changed) {
  const auto& answer = desk_of(bench).advice->follow();
  if (!answer) return nullptr;
  const std::optional<Forecast>& forecast = changed ? answer->followed.changed : answer->followed.unchanged;
  return forecast ? &*forecast : nullptr;
}

std::string why_no_forecast(const Workbench& bench, bool changed) {
  return forecast_in(bench, changed) != nullptr ? "" : "There is nothing to show yet: follow the wind first.";
}

void show(const BenchInside& in, bool changed) {
  const FollowAnswer& answer = *in.advice().follow();
  Comparison comparison;
  comparison.name = changed ? "as it will be, with the change" : "as it will be, nothing changed";
  comparison.pinned = changed ? answer.changed : answer.unchanged;
  comparison.stage = in.desk().stage;
  comparison.on_right = true;
  in.comparison = std::move(comparison);
}

void type(const BenchInside& in, const TypedRow& place, std::size_t cell, const std::string& text) {
  TypedReadings& typed = in.desk().readings;
  const Result<Plan> plan = check(in.state().draft);
  typed = in_units(std::move(typed), plan.ok() ? counter_of(plan.value()) : nullptr, place.inch);
  // A row without a layer is known by what stands in it.
  const auto is_it = [&](const TypedRow& row) {
    return row.same_place(place) || (!row.layer && !row.at_end && row.layer == place.layer &&
                                     row.at_end == place.at_end && row.cells == place.cells);
  };
  if (std::none_of(typed.begin(), typed.end(), is_it)) {
    Checkpoint checkpoint;
    checkpoint.at_end = place.at_end;
    checkpoint.layer = place.layer.value_or(0);
    typed = with_checkpoints(std::move(typed), {checkpoint});
    if (typed.size() == 1) typed.front().inch = place.inch;
  }
  const auto found = std::find_if(typed.begin(), typed.end(), is_it);
  if (found != typed.end()) found->cells[cell] = text;
}

bool open_table(const BenchInside& in, const std::string& path) {
  in.question.reset();
  const Plan plan = check(in.state().draft).value();
  const Result<AsWound> read = load_as_wound(path, counter_of(plan));
  if (!in.done_or_told(fmt::format("{} could not be read.", path), read.ok() ? Issues{} : read.issues()))
    return false;
  in.desk().readings = typed_of(read.value());
  return true;
}

bool save_table(const BenchInside& in, const std::string& path) {
  in.question.reset();
  const Plan plan = check(in.state().draft).value();
  return in.done_or_told(
      fmt::format("{} could not be written.", path),
      write_file_atomically(path, as_wound_table(read_typed(in.desk().readings, plan).value().readings)));
}

}  // namespace

Command cmd::type_reading(const TypedRow& place, std::size_t cell, const std::string& text) {
  return {{.name = "type reading", .in_lesson = false, .act = [place, cell, text](const BenchInside& in) {
             type(in, place, cell, text);
           }}};
}

Command cmd::clear_readings() {
  return {
      {.name = "clear readings", .in_lesson = false, .why_not = why_no_readings, .act = [](const BenchInside& in) {
         in.desk().readings.clear();
         in.advice().forget(AdviceKind::follow);
       }}};
}

Command cmd::follow_wind() {
  return {{.name = "follow wind", .in_lesson = false, .why_not = why_not_follow, .act = follow_now}};
}

Command cmd::show_forecast(bool changed) {
  return {{.name = changed ? "show forecast with the change" : "show forecast",
           .needs = Needs::active_build,
           .in_lesson = false,
           .why_not = [changed](const Workbench& bench) { return why_no_forecast(bench, changed); },
           .act = [changed](const BenchInside& in) { show(in, changed); }}};
}

Command cmd::open_readings(const std::string& path) {
  return {
      {.name = "open readings", .in_lesson = false, .why_not = why_not_sound, .act = [path](const BenchInside& in) {
         return open_table(in, path);
       }}};
}

Command cmd::save_readings(const std::string& path) {
  return {
      {.name = "save readings", .in_lesson = false, .why_not = why_not_follow, .act = [path](const BenchInside& in) {
         return save_table(in, path);
       }}};
}

}  // namespace laywright
