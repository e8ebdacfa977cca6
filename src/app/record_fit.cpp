#include <memory>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "advise/carry_over.h"
#include "answers/fit_report.h"
#include "app/advice_options.h"
#include "app/fit_options.h"
#include "app/output.h"
#include "app/record_parts.h"
#include "app/watch.h"
#include "app/wind_options.h"
#include "app/written_files.h"
#include "base/readable.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"
#include "records/keep_fit.h"

namespace laywright {
namespace {

struct RecordFitOptions {
  long long number = 0;
  RecordsOption records;
  bool json = false;
  LaySettings lay;
  int threads = threads_at_hand();
  FitTuning tuning;
  std::string by;
  std::string next, output;
  bool in_place = false;
};

// The plan that is to wind right next.
struct NextPlan {
  std::string text;
  Plan plan;
};

Result<std::optional<NextPlan>> load_next(const RecordFitOptions& options, const EntrySource& entries) {
  if (options.next.empty()) return std::optional<NextPlan>();
  const Result<std::string> text = read_plan_text(options.next);
  if (!text.ok()) return text.issues();
  Result<Plan> plan = plan_from_text(text.value(), options.next, &entries);
  if (!plan.ok()) return plan.issues();
  return std::optional(NextPlan{text.value(), std::move(plan).value()});
}

int carry(const RecordFitOptions& options, const Plan& wound, const Fit& found, const NextPlan& next,
          std::string& told) {
  PlanDraft draft = next.plan.asked();
  const std::vector<CarriedSetting> carried = carry_over(wound, found, draft);
  const std::string file = options.in_place ? options.next : options.output;
  if (carried.empty()) {
    told = fmt::format("\n{}: {}.\n",
                       options.in_place ? fmt::format("{} is left as it is", visible(file))
                                        : fmt::format("{} was not written", visible(file)),
                       nothing_to_carry);
    return options.in_place ? exit_done : exit_not_written;
  }
  const Result<Plan> sound = check(draft);
  if (!sound.ok()) {
    print_issues(sound.issues());
    tell(fmt::format("{} would not be sound with what the fit found; nothing was written to it\n",
                     visible(options.next)));
    return exit_unsound;
  }
  const Result<std::string> saved = save_plan(file, next.text, next.plan.asked(), draft);
  print_issues(saved.issues());
  if (!saved.ok()) return exit_not_written;
  told = fmt::format("\nCarried into {}\n", visible(file));
  for (const CarriedSetting& each : carried) told += fmt::format("  {}\n", carried_words(draft, each));
  return exit_done;
}

int fit_record(const RecordFitOptions& options, const EntrySource& entries) {
  if (!options.next.empty() && !options.in_place && options.output.empty()) {
    tell("error: say where the plan is to be written: --in-place, or -o FILE\n");
    return exit_command_line;
  }
  const Result<std::optional<NextPlan>> next = load_next(options, entries);
  print_issues(next.issues());
  if (!next.ok()) return exit_unsound;
  Result<RecordBook> opened = open_records(options.records, Opening::to_read);
  if (!opened.ok()) return conclude({exit_unsound, opened.issues(), {}});
  RecordBook book = std::move(opened).value();
  const Result<SpoolRecord> record = book.find(options.number);
  if (!record.ok()) return conclude({exit_unsound, record.issues(), {}});
  const AsWound wound = as_wound_of(record.value());
  const Result<Plan> plan = plan_from_text(record.value().plan_text, wound.file);
  if (!plan.ok()) return conclude({exit_unsound, plan.issues(), {}});
  const Result<FitSettings> settings =
      fit_settings(plan.value().draft(), options.lay, options.threads, options.tuning);
  print_issues(settings.issues());
  if (!settings.ok()) return exit_command_line;
  if (wound.readings.empty()) {
    tell(fmt::format("error: {}; `laywright record amend {} --measured FILE.csv` adds them\n",
                     no_readings_words(options.number), options.number));
    return exit_unsound;
  }

  std::optional<Watch> watch(std::in_place);
  watch->begin("fitting");
  const Result<Fit> found = fit(plan.value(), wound, settings.value(), watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!found.ok()) return conclude(found.issues(), stopped);
  RecordEntry entry = new_entry(LAYWRIGHT_VERSION);
  entry.by = options.by;
  if (const Issues trouble = keep_fit(book, record.value(), found.value(), std::move(entry)); !trouble.empty())
    return conclude({exit_not_written, trouble, {}});

  std::string told;
  const int code = next.value() ? carry(options, plan.value(), found.value(), *next.value(), told) : int{exit_done};
  if (options.json) tell(told);
  const std::string text = options.json ? fit_json(plan.value(), wound, found.value())
                                        : fit_text(plan.value(), wound, found.value()) + told;
  return print(text) ? code : exit_not_written;
}

}  // namespace

void add_record_fit(CommandLine record, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      record.add_command("fit", "What a recorded spool was wound with, and what to set next");
  const auto options = std::make_shared<RecordFitOptions>();
  add_number(command, options->number);
  const CommandOption next =
      command.add_option("--carry-into", options->next, "Take what was found over into this plan, *.lay.toml")
          .type_name("FILE.lay.toml");
  const CommandOption in_place =
      command.add_flag("--in-place", options->in_place, "Write that plan itself anew, comments kept").needs(next);
  const CommandOption output = command.add_option("-o,--output", options->output, "Or write it to this file")
                                   .type_name("FILE.lay.toml")
                                   .needs(next)
                                   .excludes(in_place);
  guard_inputs(command, {next}, {{output, {".toml"}}});
  command.add_option("--by", options->by, "Who fits it; the fit is kept with the record").type_name("NAME");
  add_records_option(command, options->records);
  add_wind_options(command, options->lay);
  add_threads_option(command, options->threads);
  add_fit_tuning(command, options->tuning);
  command.add_flag("--json", options->json, "Print one JSON document (format \"lay-fit 1\") instead of text");
  command.footer(
      "As `laywright fit` with the kept plan and readings. What it corrects is carried over: the pitch in the same\n"
      "proportion, stops and dwell by the same amount. What the readings do not tell is not touched.\n\n"
      "Examples:\n"
      "  laywright record fit 1\n"
      "  laywright record fit 1 --carry-into my-spool.lay.toml -o next.lay.toml\n");
  command.callback([options, &entries, &exit_code] { exit_code = fit_record(*options, entries); });
}

}  // namespace laywright
