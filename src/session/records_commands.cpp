#include "session/records_commands.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "answers/fit_report.h"
#include "desk/plan_edits.h"
#include "jobs/trouble.h"
#include "plan/plan_values.h"
#include "records/record_words.h"
#include "session/bench_inside.h"
#include "session/reasons.h"
#include "session/records_home.h"

namespace laywright {
namespace {

bool any_typed(const TypedReadings& typed) {
  return std::any_of(typed.begin(), typed.end(), [](const TypedRow& row) { return !row.empty(); });
}

std::string why_busy(const Workbench& bench) {
  return bench.records().keeping() ? "A record is being written: wait a moment." : "";
}

const SpoolRecord* page_of(const Workbench& bench) {
  const auto& seen = bench.records().seen();
  return seen && seen->page && seen->of.number == bench.records().looked_at().number ? &*seen->page : nullptr;
}

constexpr const char* no_page = "No record is open: choose one in the list.";

std::string why_not_keep(const Workbench& bench, const RecordNames& names, const SaidOfSpool& said) {
  if (std::string why = why_not_sound(bench); !why.empty()) return why;
  if (!bench.active()->document->laid_in_full()) return reason::being_laid;
  if (std::string why = why_busy(bench); !why.empty()) return why;
  const Plan& plan = bench.wound()->plan();
  if (names.spool.empty() && plan.order().spool.empty()) return "Give the spool's number.";
  if (!names.date.empty() && !is_date(names.date))
    return fmt::format("\"{}\" is no day of the calendar, like 2026-11-29.", names.date);
  const Result<RecordEntry> entry = entry_said(said, plan);
  return entry.ok() ? "" : trouble_words(entry.issues());
}

// The build is no longer needed by then: what is written is made of it here, on another thread.
void keep(const BenchInside& in, const RecordNames& names, RecordEntry entry) {
  const WoundPtr wound = in.document().wound();
  LaySettings settings;
  settings.seed = in.document().seed();
  settings.fidelity = wound->pass.fidelity;
  const std::string place = in.bench.records().seen() ? in.bench.records().seen()->place_words : "";
  in.records.keep(Opening::to_write,
                  [wound, settings, names, place, entry = std::move(entry),
                   copy = in.document().recovery_copy()](RecordBook& book) -> Result<RecordsDesk::Written> {
                    SpoolRecord record =
                        planned_record(wound->plan(), copy().text, settings, wound->build(), wound->measurements());
                    name_record(record, names, LAYWRIGHT_VERSION);
                    record.entries.push_back(entry);
                    const Result<long long> number = book.add(record);
                    if (!number.ok()) return number.issues();
                    record.number = number.value();
                    return RecordsDesk::Written{record.number, kept_words(record, place)};
                  });
}

std::string why_not_amend(const Workbench& bench, const SaidOfSpool& said) {
  if (page_of(bench) == nullptr) return no_page;
  if (std::string why = why_busy(bench); !why.empty()) return why;
  const std::optional<Plan>& plan = bench.records().seen()->plan;
  if (!plan) return "The plan that was recorded is not sound: nothing can be added.";
  const Result<RecordEntry> entry = entry_said(said, *plan);
  if (!entry.ok()) return trouble_words(entry.issues());
  return says_something(entry.value()) ? ""
                                       : "Nothing is said yet: type readings or a note, or accept or reject it.";
}

void amend(const BenchInside& in, const RecordEntry& entry) {
  const long long number = page_of(in.bench)->number;
  in.records.keep(Opening::to_read,
                  [number, entry, place = in.bench.records().seen()->place_words](
                      RecordBook& book) -> Result<RecordsDesk::Written> {
                    if (Issues trouble = book.amend(number, entry); !trouble.empty()) return trouble;
                    return RecordsDesk::Written{number, added_words(number, place)};
                  });
}

std::string why_not_fit(const Workbench& bench) {
  const SpoolRecord* record = page_of(bench);
  if (record == nullptr) return no_page;
  if (bench.records().fitting().busy) return "A spool is being fitted: wait for it, or stop it.";
  return as_wound_of(*record).readings.empty()
             ? "Nothing was measured on it yet: add readings, and it can be fitted."
             : "";
}

std::string why_not_carry(const Workbench& bench) {
  if (std::string why = why_not_sound(bench); !why.empty()) return why;
  if (!bench.records().found()) return "No spool was fitted yet: fit one on its page first.";
  if (is_carried(bench)) return "It is carried into this plan already; Ctrl+Z takes it back.";
  PlanDraft next;
  if (would_carry(bench, &next).empty()) return fmt::format("There is nothing to carry: {}.", nothing_to_carry);
  return check(next).ok() ? "" : "The plan would not be sound with what the fit found.";
}

bool move(const BenchInside& in, const std::string& text) {
  const Result<RecordsPlace> place = records_place(text.empty() ? records_place_text("") : text);
  if (!in.done_or_told("Records cannot be kept there.", place.ok() ? Issues{} : place.issues())) return false;
  RecordsLook look = in.records.looked_at();
  // By its whole name: the next start may be in another folder.
  const std::string whole = place.value().on_server() ? text : place.value().file.string();
  look.place = text.empty() ? records_place_text("") : whole;
  look.number = 0;
  in.settings.records = text.empty() || place.value().has_password ? "" : whole;
  in.records.look(std::move(look));
  return true;
}

}  // namespace

Result<RecordEntry> entry_said(const SaidOfSpool& said, const Plan& plan) {
  RecordEntry entry = new_entry(LAYWRIGHT_VERSION);
  entry.by = said.by;
  entry.note = said.note;
  entry.decision = said.decision;
  if (said.decision == Decision::rejected) entry.reason = said.reason;
  if (any_typed(said.readings)) {
    const Result<AsWound> read = read_typed(said.readings, plan);
    if (!read.ok()) {
      Issue issue;
      issue.what = typed_trouble(said.readings, read.issues().front());
      return issue;
    }
    entry.readings = read.value().readings;
    for (Reading& reading : entry.readings) reading.line = 0;
  }
  if (Issues issues = check_entry(entry); !issues.empty()) return issues;
  return entry;
}

std::vector<CarriedSetting> would_carry(const Workbench& bench, PlanDraft* next) {
  const auto& found = bench.records().found();
  if (!found || bench.active() == nullptr) return {};
  PlanDraft draft = bench.active()->document->state().draft;
  std::vector<CarriedSetting> carried = carry_over(found->plan, found->fit, draft);
  if (next != nullptr) *next = std::move(draft);
  return carried;
}

bool is_carried(const Workbench& bench) {
  const Desk* desk = bench.active();
  if (desk == nullptr) return false;
  const PlanDraft& draft = desk->document->state().draft;
  const std::vector<RecordsDesk::CarriedInto>& all = bench.records().carried();
  return std::any_of(all.begin(), all.end(), [&](const RecordsDesk::CarriedInto& into) {
    return into.desk == desk->id &&
           std::all_of(into.settings.begin(), into.settings.end(), [&](const CarriedSetting& each) {
             const std::optional<double> now = value_at(draft, each.path);
             return now && std::abs(*now - each.after) <= 1e-9 * std::max(1.0, std::abs(each.after));
           });
  });
}

Command cmd::move_records(const std::string& place) {
  return {{.name = "move records",  // the place may hold a password
           .needs = Needs::nothing,
           .why_not = why_busy,
           .act = [place](const BenchInside& in) { return move(in, place); }}};
}

Command cmd::filter_records(const RecordFilter& filter) {
  return {{.name = "filter records", .needs = Needs::nothing, .act = [filter](const BenchInside& in) {
             RecordsLook look = in.records.looked_at();
             look.filter = filter;
             in.records.look(std::move(look));
           }}};
}

Command cmd::open_record(long long number) {
  return {{.name = fmt::format("open record {}", number),
           .needs = Needs::nothing,
           .act = [number](const BenchInside& in) {
             RecordsLook look = in.records.looked_at();
             look.number = number;
             in.records.forget_kept();
             in.records.look(std::move(look));
           }}};
}

Command cmd::reload_records() {
  return {{.name = "reload records", .needs = Needs::nothing, .act = [](const BenchInside& in) {
             in.records.reload();
           }}};
}

Command cmd::keep_spool(const RecordNames& names, const SaidOfSpool& said) {
  return {{.name = "keep spool",
           .needs = Needs::active_build,
           .in_lesson = false,
           .why_not = [names, said](const Workbench& bench) { return why_not_keep(bench, names, said); },
           .act =
               [names, said](const BenchInside& in) {
                 keep(in, names, entry_said(said, in.document().wound()->plan()).value());
               }}};
}

Command cmd::amend_record(const SaidOfSpool& said) {
  return {{.name = "amend record",
           .needs = Needs::nothing,
           .why_not = [said](const Workbench& bench) { return why_not_amend(bench, said); },
           .act =
               [said](const BenchInside& in) {
                 amend(in, entry_said(said, *in.bench.records().seen()->plan).value());
               }}};
}

Command cmd::fit_record(const std::string& by) {
  return {
      {.name = "fit record", .needs = Needs::nothing, .why_not = why_not_fit, .act = [by](const BenchInside& in) {
         in.records.fit(page_of(in.bench)->number, by);
       }}};
}

Command cmd::stop_fitting() {
  return {
      {.name = "stop fitting a record",
       .needs = Needs::nothing,
       .why_not =
           [](const Workbench& bench) { return bench.records().fitting().busy ? "" : "No spool is being fitted."; },
       .act = [](const BenchInside& in) { in.records.stop_fitting(); }}};
}

Command cmd::carry_fit() {
  return {{.name = "carry fit", .in_lesson = false, .why_not = why_not_carry, .act = [](const BenchInside& in) {
             PlanDraft next;
             std::vector<CarriedSetting> carried = would_carry(in.bench, &next);
             in.records.note_carried({in.desk().id, std::move(carried)});
             in.document().edit(with_values_of(in.state(), next),
                                fmt::format("what spool {} was wound with", in.bench.records().found()->spool));
           }}};
}

}  // namespace laywright
