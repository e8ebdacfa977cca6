#include "app/follow_command.h"

#include <memory>
#include <optional>
#include <string>

#include "answers/follow_report.h"
#include "app/advice_options.h"
#include "app/command_outcome.h"
#include "app/exit_code.h"
#include "app/output.h"
#include "app/reading_options.h"
#include "app/watch.h"
#include "app/wound_plan.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct FollowOptions : AdviceOptions {
  std::string readings;
  bool checklist = false;
  ReadingOptions reading;
};

int print_checklist(const Plan& plan, const FollowOptions& options, const ReadingErrors& errors) {
  std::optional<Watch> watch(std::in_place);
  const WoundPlan wound = lay_and_measure(plan, options.lay, *watch);
  if (!wound.build) {
    watch.reset();
    return conclude(wound.outcome);
  }
  watch->begin("reading off");
  Progress apart;
  const TakeupRun run = take_up(plan, *wound.build, *wound.measurements, apart);
  const Result<std::vector<ChecklistRow>> rows =
      checklist(plan, run.checkpoints, errors, options.lay, usual_plan_draws, options.threads, watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!rows.ok()) return conclude(rows.issues(), stopped);
  return print(options.json ? checklist_json(plan, rows.value()) : checklist_text(plan, rows.value()))
             ? exit_done
             : exit_not_written;
}

int print_followed(const Plan& plan, const FollowOptions& options, const ReadingErrors& errors) {
  const Result<AsWound> wound = load_as_wound(options.readings, counter_of(plan));
  print_issues(wound.issues());
  if (!wound.ok()) return exit_unsound;
  FollowSettings settings;
  settings.lay = options.lay;
  settings.threads = options.threads;
  settings.errors = errors;
  std::optional<Watch> watch(std::in_place);
  watch->begin("following");
  const Result<Followed> found = follow(plan, wound.value(), settings, watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!found.ok()) return conclude(found.issues(), stopped);
  return print(options.json ? follow_json(plan, wound.value(), found.value())
                            : follow_text(plan, wound.value(), found.value()))
             ? exit_done
             : exit_not_written;
}

int run(const FollowOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  ReadingErrors errors;
  const Issues trouble = read_errors(plan.value().draft(), options.reading, errors);
  print_issues(trouble);
  if (!trouble.empty()) return exit_command_line;
  if (options.checklist) return print_checklist(plan.value(), options, errors);
  if (options.readings.empty()) {
    tell(
        "error: give the table of readings, READINGS; --checklist says what to read, fit --template makes an empty "
        "table\n");
    return exit_command_line;
  }
  return print_followed(plan.value(), options, errors);
}

}  // namespace

void add_follow_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("follow", "A wind while it is wound: on plan or not, and what to change now");
  const auto options = std::make_shared<FollowOptions>();
  add_advice_options(command, *options, "lay-follow 1\" or \"lay-checklist 1");
  command.add_option("READINGS", options->readings, "What was read so far, a CSV table as fit takes it")
      .type_name("");
  command.add_flag("--checklist", options->checklist,
                   "Print where to read, what it should be and how far off it may be, and do nothing else");
  add_reading_options(command, options->reading);
  command.footer(
      "Holds each reading against the plan, as far off as errors of reading and the scatter of the wind explain;\n"
      "where it is off, finds what most likely is wrong, what to change now, and what the spool will be with the\n"
      "change and without. Estimates, by winds that are laid anew from the last reading on.\n\n"
      "Examples:\n"
      "  laywright follow samples/even.lay.toml --checklist --fidelity 0.25\n"
      "  laywright follow samples/even.lay.toml samples/half-wound.csv --fidelity 0.25\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
