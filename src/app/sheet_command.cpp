#include "app/sheet_command.h"

#include <memory>
#include <new>
#include <optional>
#include <string>

#include <fmt/format.h>

#include "app/build_picture.h"
#include "app/command_outcome.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "base/today.h"
#include "paper/fonts.h"
#include "paper/setup_sheet.h"
#include "paper/sheet_file.h"
#include "plan/plan_file.h"
#include "takeup/takeup_run.h"

namespace laywright {
namespace {

struct SheetOptions {
  std::string plan, file;
  std::string paper = "a4";
  std::optional<int> page;
  LaySettings settings;
  int draws = 1;
};

CommandOutcome lay_and_draw(const Plan& plan, const SheetOptions& options, SheetFormat format) {
  Watch watch;
  Progress& progress = watch.progress();
  WoundPlan wound = lay_and_measure(plan, options.settings, watch);
  if (!wound.outcome.done()) return wound.outcome;
  const TakeupRun run = take_up(plan, *wound.build, *wound.measurements, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};

  const auto verdict = judged_over_draws(plan, options.settings, wound, run, options.draws, watch);
  if (!verdict) return {exit_stopped, {}, {}};

  watch.begin("drawing");
  SetupSheet sheet{
      plan, *wound.build, *wound.measurements, run, options.paper == "letter" ? Paper::letter : Paper::a4, {}};
  sheet.verdict = verdict;
  sheet.drawn_on = today();
  if (wound.build->nodes.size() > 0)
    sheet.picture = picture_for_paper(SceneSource(plan, wound.build, wound.measurements), progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  const std::string bytes = sheet_bytes(format, draw_setup_sheet(sheet), options.page.value_or(1));
  if (bytes.empty()) throw std::bad_alloc();
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  Issues trouble = write_file_atomically(options.file, bytes);
  if (!trouble.empty()) return {exit_not_written, std::move(trouble), {}};
  return wound.outcome;
}

Issue option_issue(const char* option, const std::string& value, const char* allowed, const char* what) {
  Issue issue;
  issue.key = option;
  issue.value = value;
  issue.allowed = allowed;
  issue.what = what;
  return issue;
}

int make_sheet(const SheetOptions& options, const EntrySource& entries) {
  const SheetFormat format = sheet_format_of(options.file).value();
  if (options.page && format == SheetFormat::pdf) {
    print_issues({option_issue("--page", fmt::format("{}", *options.page), "with .svg and .png only",
                               "a PDF holds both pages")});
    return exit_command_line;
  }
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  print_issues(missing_fonts());
  return conclude(lay_and_draw(plan.value(), options, format));
}

void add_options(CLI::App& command, SheetOptions& options) {
  const CLI::Option* plan =
      command.add_option("PLAN", options.plan, "The lay plan, *.lay.toml")->type_name("")->required();
  const CLI::Option* file =
      command
          .add_option("-o,--output", options.file, "The sheet: a PDF of two pages, or one page of it as SVG or PNG")
          ->type_name("FILE.pdf|svg|png")
          ->required();
  guard_inputs(command, {plan}, {{file, {".pdf", ".svg", ".png"}, true}});
  command.add_option("--paper", options.paper, "a4 or letter")
      ->type_name("SIZE")
      ->check(CLI::IsMember({"a4", "letter"}).description(""))
      ->capture_default_str();
  command.add_option("--page", options.page, "Which page, 1 or 2, for SVG and PNG (the first by default)")
      ->type_name("N")
      ->check(number_between(1, setup_pages));
  add_wind_options(command, options.settings);
  add_draws_option(command, options.draws);
}

}  // namespace

void add_sheet_command(CLI::App& program, const EntrySource& entries, int& exit_code) {
  CLI::App* command = program.add_subcommand("sheet", "Lay a plan and make the set-up sheet for the winder");
  const auto options = std::make_shared<SheetOptions>();
  add_options(*command, *options);
  command->footer(
      "Examples:\n"
      "  laywright sheet samples/magnet-wire.lay.toml -o magnet-wire.pdf\n"
      "  laywright sheet samples/magnet-wire.lay.toml -o magnet-wire.pdf --paper letter\n"
      "  laywright sheet samples/even.lay.toml -o even-2.png --page 2");
  command->callback([options, &entries, &exit_code] { exit_code = make_sheet(*options, entries); });
}

}  // namespace laywright
