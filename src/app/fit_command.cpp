#include "app/fit_command.h"

#include <memory>
#include <optional>
#include <string>

#include <fmt/format.h>

#include "advise/fit.h"
#include "answers/fit_report.h"
#include "app/advice_options.h"
#include "app/exit_code.h"
#include "app/fit_options.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/watch.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct FitOptions : AdviceOptions {
  std::string measured;
  bool make_template = false;
  int layers = 12;
  FitTuning tuning;
};

int run(const FitOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  if (options.make_template) {
    return print(as_wound_template(plan.value(), options.layers)) ? exit_done : exit_not_written;
  }
  if (options.measured.empty()) {
    tell("error: give the table of readings, MEASURED; --template makes an empty one\n");
    return exit_command_line;
  }
  const Result<FitSettings> settings =
      fit_settings(plan.value().draft(), options.lay, options.threads, options.tuning);
  print_issues(settings.issues());
  if (!settings.ok()) return exit_command_line;
  const Result<AsWound> wound = load_as_wound(options.measured, counter_of(plan.value()));
  print_issues(wound.issues());
  if (!wound.ok()) return exit_unsound;

  std::optional<Watch> watch(std::in_place);
  watch->begin("fitting");
  const Result<Fit> found = fit(plan.value(), wound.value(), settings.value(), watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!found.ok()) return conclude(found.issues(), stopped);
  return print(options.json ? fit_json(plan.value(), wound.value(), found.value())
                            : fit_text(plan.value(), wound.value(), found.value()))
             ? exit_done
             : exit_not_written;
}

void add_options(CommandLine command, FitOptions& options) {
  add_advice_options(command, options, "lay-fit 1");
  command.add_option("MEASURED", options.measured, "What was measured, a CSV table").type_name("");
  command.add_flag("--template", options.make_template, "Print an empty table to fill in, and do nothing else");
  command.add_option("--layers", options.layers, "Layers in the template")
      .type_name("N")
      .check(number_between(1, 10'000))
      .capture_default_str();
  add_fit_tuning(command, options.tuning);
}

}  // namespace

void add_fit_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("fit", "What a real spool was wound with, from measurements on it");
  const auto options = std::make_shared<FitOptions>();
  add_options(command, *options);
  command.footer(
      "Fits pitch, fiber diameter, stops, dwell and friction to the readings, each with a 95 % interval, says\n"
      "what the readings cannot tell, and what to set for the next spool.\n\n"
      "Examples:\n"
      "  laywright fit --template samples/even.lay.toml > measured.csv\n"
      "  laywright fit samples/even.lay.toml measured.csv --diameter-error \"0.03 mm\"\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
