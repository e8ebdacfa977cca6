#include "app/lay_command.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/build_picture.h"
#include "app/command_outcome.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/readable.h"
#include "base/today.h"
#include "figures/json.h"
#include "figures/summary.h"
#include "paper/file_set.h"
#include "paper/fonts.h"
#include "paper/report_set.h"
#include "plan/plan_file.h"
#include "takeup/takeup_run.h"

namespace laywright {
namespace {

struct LayOptions {
  std::string plan;
  bool json = false;
  std::string folder;
  LaySettings settings;
  ReportSettings reports;
  int draws = 1;
};

// The wind, laid, measured and, where a folder is given, written into it.
CommandOutcome lay_and_report(const Plan& plan, const LayOptions& options) {
  Watch watch;
  Progress& progress = watch.progress();
  // Before the work: a folder that cannot be written into should not cost a long wait.
  std::optional<FileSet> files;
  if (!options.folder.empty()) {
    Result<FileSet> opened = FileSet::into(options.folder);
    if (!opened.ok()) return {exit_not_written, opened.issues(), {}};
    files.emplace(std::move(opened).value());
  }

  WoundPlan wound = lay_and_measure(plan, options.settings, watch);
  if (!wound.outcome.done()) return wound.outcome;
  const TakeupRun run = take_up(plan, *wound.build, *wound.measurements, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  const auto verdict = judged_over_draws(plan, options.settings, wound, run, options.draws, watch);
  if (!verdict) return {exit_stopped, {}, {}};

  SummaryStyle style;
  style.verdict = verdict;
  style.whole_lists_in = files ? visible(options.folder) + " (layers.csv, findings.csv)" : "--json, or --out DIR";
  std::string text = options.json ? to_json(plan, *wound.build, *wound.measurements, run, *verdict)
                                  : summary_text(plan, *wound.build, *wound.measurements, run, style);
  if (files) {
    watch.begin("writing");
    ReportSettings settings = options.reports;
    settings.verdict = verdict;
    settings.drawn_on = today();
    if (wound.build->nodes.size() > 0)
      settings.sheet_picture = picture_for_paper(SceneSource(plan, wound.build, wound.measurements), progress);
    if (progress.cancelled()) return {exit_stopped, {}, {}};
    Issues trouble = add_reports(*files, plan, *wound.build, *wound.measurements, run, settings, progress);
    if (progress.cancelled()) return {exit_stopped, {}, {}};
    if (trouble.empty()) trouble = files->commit();
    if (!trouble.empty()) return {exit_not_written, trouble, {}};
    if (!options.json) {
      text += fmt::format("\nWritten into {}\n  {}\n", visible(options.folder), fmt::join(report_names, ", "));
    }
  }
  wound.outcome.text = std::move(text);
  return wound.outcome;
}

int lay_plan(const LayOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;

  if (!options.folder.empty()) print_issues(missing_fonts());
  return conclude(lay_and_report(plan.value(), options));
}

void add_options(CLI::App& command, LayOptions& options) {
  const CLI::Option* plan =
      command.add_option("PLAN", options.plan, "The lay plan, *.lay.toml")->type_name("")->required();
  command.add_flag("--json", options.json, "Print one JSON document (format \"lay-build 1\") instead of text");
  CLI::Option* out = command.add_option("--out", options.folder,
                                        "Write all reports into this folder; it is made where it is missing");
  out->type_name("DIR");
  guard_inputs(
      command, {plan},
      {{out, {}, false, [] { return std::vector<std::string>(report_names.begin(), report_names.end()); }}});
  add_wind_options(command, options.settings);
  add_draws_option(command, options.draws);
  command.add_option("--angle", options.reports.section_angle_deg, "Spool angle of the section picture, in degrees")
      ->type_name("DEG")
      ->check(number_between(-360.0, 360.0))
      ->needs(out)
      ->capture_default_str();
}

}  // namespace

void add_lay_command(CLI::App& program, const EntrySource& entries, int& exit_code) {
  CLI::App* command = program.add_subcommand("lay", "Lay a plan: print the summary, the layers and the findings");
  const auto options = std::make_shared<LayOptions>();
  add_options(*command, *options);
  command->footer(fmt::format(
      "With --out, these files are written, and none of them where it fails or is stopped:\n  {}\n"
      "Where summary.txt stands, all of them are there and of one wind. What a killed run leaves is put in\n"
      "place by the next one into that folder.\n\n"
      "Examples:\n"
      "  laywright lay samples/even.lay.toml\n"
      "  laywright lay samples/long-dwell.lay.toml --out out/long-dwell\n"
      "  laywright lay samples/even.lay.toml --json > even.json\n",
      fmt::join(report_names, ", ")));
  command->callback([options, &entries, &exit_code] { exit_code = lay_plan(*options, entries); });
}

}  // namespace laywright
