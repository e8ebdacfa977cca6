#include <memory>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "app/output.h"
#include "app/record_parts.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "plan/plan_file.h"
#include "records/planned.h"
#include "records/record_text.h"
#include "records/record_words.h"

namespace laywright {
namespace {

struct AddOptions {
  std::string plan;
  RecordNames names;
  bool json = false;
  LaySettings settings;
  EntryOptions entry;
  RecordsOption records;
};

struct AmendOptions {
  long long number = 0;
  EntryOptions entry;
  RecordsOption records;
};

CommandOutcome keep(SpoolRecord record, const AddOptions& options) {
  Result<RecordBook> book = open_records(options.records, Opening::to_write);
  if (!book.ok()) return {exit_not_written, book.issues(), {}};
  RecordBook open = std::move(book).value();
  const Result<long long> number = open.add(record);
  if (!number.ok()) return {exit_not_written, number.issues(), {}};
  record.number = number.value();
  if (options.json) return {exit_done, {}, record_json(record)};
  return {exit_done, {}, fmt::format("{}\n", kept_words(record, records_words(options.records)))};
}

int add(const AddOptions& options, const EntrySource& entries) {
  const Result<std::string> text = read_plan_text(options.plan);
  if (!text.ok()) return conclude({exit_unsound, text.issues(), {}});
  const Result<Plan> plan = plan_from_text(text.value(), options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  Result<RecordEntry> entry = entry_of(options.entry, counter_of(plan.value()));
  if (!entry.ok()) return conclude({exit_unsound, entry.issues(), {}});

  std::optional<Watch> watch(std::in_place);
  const WoundPlan wound = lay_and_measure(plan.value(), options.settings, *watch);
  watch.reset();
  if (!wound.outcome.done()) return conclude(wound.outcome);
  SpoolRecord record =
      planned_record(plan.value(), text.value(), options.settings, *wound.build, *wound.measurements);
  name_record(record, options.names, LAYWRIGHT_VERSION);
  record.entries.push_back(std::move(entry).value());
  if (const Issues trouble = check_record(record); !trouble.empty()) {
    print_issues(trouble);
    return exit_command_line;
  }
  return conclude(keep(std::move(record), options));
}

int amend(const AmendOptions& options) {
  Result<RecordBook> book = open_records(options.records, Opening::to_read);
  if (!book.ok()) return conclude({exit_unsound, book.issues(), {}});
  RecordBook open = std::move(book).value();
  const Result<SpoolRecord> there = open.find(options.number);
  if (!there.ok()) return conclude({exit_unsound, there.issues(), {}});
  const Result<Plan> plan = plan_from_text(there.value().plan_text, there.value().plan_file);
  const Result<RecordEntry> entry = entry_of(options.entry, plan.ok() ? counter_of(plan.value()) : nullptr);
  if (!entry.ok()) return conclude({exit_unsound, entry.issues(), {}});
  if (!says_something(entry.value())) {
    tell("error: say what is to be added: --measured, --picture, --accept, --reject or --note\n");
    return exit_command_line;
  }
  if (const Issues trouble = open.amend(options.number, entry.value()); !trouble.empty())
    return conclude({exit_not_written, trouble, {}});
  return conclude({exit_done, {}, fmt::format("{}\n", added_words(options.number, records_words(options.records)))});
}

}  // namespace

void add_record_add(CommandLine record, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      record.add_command("add", "Keep a spool that was wound: its plan, and what is known of it");
  const auto options = std::make_shared<AddOptions>();
  command.add_option("PLAN", options->plan, "The lay plan as it was wound, *.lay.toml").type_name("").required();
  command
      .add_option("--spool-number", options->names.spool,
                  "Number or name of the spool; without it the plan's order.spool")
      .type_name("NAME");
  command.add_option("--machine", options->names.machine, "The machine; without it the one that the plan names")
      .type_name("NAME");
  command.add_option("--order", options->names.order, "The order's number; without it the plan's order.number")
      .type_name("NAME");
  command.add_option("--date", options->names.date, "When it was wound, like 2026-11-29; without it today")
      .type_name("DATE")
      .check(a_date());
  add_entry_options(command, options->entry);
  add_records_option(command, options->records);
  add_wind_options(command, options->settings);
  command.add_flag("--json", options->json, "Print one JSON document (format \"lay-record 1\") instead of text");
  command.footer(
      "Lays the plan and keeps, with its whole text, what the build gives: lengths, outer diameters and widths,\n"
      "layer by layer. Measure on a spool that stands: mind the in-running nip and ends under tension.\n\n"
      "Examples:\n"
      "  laywright record add samples/even.lay.toml --spool-number 17 --measured samples/as-wound.csv --accept\n"
      "  laywright record add samples/even.lay.toml --spool-number 18 --reject \"dropped turns\" --by \"late "
      "shift\"\n");
  command.callback([options, &entries, &exit_code] { exit_code = add(*options, entries); });
}

void add_record_amend(CommandLine record, int& exit_code) {
  const CommandLine command =
      record.add_command("amend", "Add readings, pictures, a decision or a note to a record");
  const auto options = std::make_shared<AmendOptions>();
  add_number(command, options->number);
  add_entry_options(command, options->entry);
  add_records_option(command, options->records);
  command.footer(
      "What was said before stays in the record's history. Of two readings at one place the later one holds.\n\n"
      "Examples:\n"
      "  laywright record amend 1 --measured samples/as-wound.csv --by \"late shift\"\n"
      "  laywright record amend 1 --reject \"edge has slipped\"\n");
  command.callback([options, &exit_code] { exit_code = amend(*options); });
}

}  // namespace laywright
