#include "app/lay_command.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/build_picture.h"
#include "app/command_outcome.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/several_plans.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/readable.h"
#include "base/today.h"
#include "figures/build_document.h"
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
  std::vector<std::string> plans;
  bool json = false;
  std::string folder;
  LaySettings settings;
  ReportSettings reports;
  std::optional<int> draws;
};

// The wind, laid, measured and, where a folder is given, written into it. With `several` it is one of them.
CommandOutcome lay_and_report(const Plan& plan, const LayOptions& options, const std::string& folder, Watch& watch,
                              OfSeveral* several) {
  Progress& progress = watch.progress();
  // Before the work: a folder that cannot be written into should not cost a long wait.
  std::optional<FileSet> files;
  if (!folder.empty()) {
    Result<FileSet> opened = FileSet::into(folder);
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
  style.whole_lists_in = files ? visible(folder) + " (layers.csv, findings.csv)" : "--json, or --out DIR";
  std::string text;
  if (several != nullptr) {
    several->row = plan_row(plan, *wound.build, *wound.measurements, *verdict);
    if (options.json) several->document = build_document(plan, *wound.build, *wound.measurements, run, *verdict);
  } else if (options.json) {
    text = to_json(plan, *wound.build, *wound.measurements, run, *verdict);
  }
  // The summaries of several are in their folders, and would hide the table.
  const bool summary = !options.json && (several == nullptr || !files);
  if (summary) text = summary_text(plan, *wound.build, *wound.measurements, run, style);
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
    if (summary) text += fmt::format("\nWritten into {}\n  {}\n", visible(folder), fmt::join(report_names, ", "));
  }
  wound.outcome.text = std::move(text);
  return wound.outcome;
}

int lay_plan(const std::string& file, const LayOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(file, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;

  if (!options.folder.empty()) print_issues(missing_fonts());
  const auto laid = [&] {
    Watch watch;
    return lay_and_report(plan.value(), options, options.folder, watch, nullptr);
  };
  return conclude(laid());
}

int lay_plans(const LayOptions& options, const EntrySource& entries) {
  const std::vector<std::string> files = named_once(options.plans);
  if (files.size() == 1) return lay_plan(files.front(), options, entries);
  if (!options.folder.empty()) print_issues(missing_fonts());
  return make_of_several({files, options.folder, "/", options.json}, entries,
                         [&](const Plan& plan, const std::string& name, Watch& watch, OfSeveral& several) {
                           const std::string folder =
                               options.folder.empty() ? "" : (std::filesystem::path(options.folder) / name).string();
                           return lay_and_report(plan, options, folder, watch, &several);
                         });
}

// The reports of one plan, or of each of several in a folder of its own.
std::vector<std::string> files_written(const LayOptions& options) {
  std::vector<std::string> folders = names_in_folder(options.plans, "/"), files;
  if (folders.empty()) folders.emplace_back();
  for (const std::string& folder : folders)
    for (const char* report : report_names) files.push_back(folder + report);
  return files;
}

void add_options(CommandLine command, LayOptions& options) {
  const CommandOption plan =
      command.add_option("PLAN", options.plans, "Lay plans, *.lay.toml").type_name("").required();
  command.add_flag(
      "--json", options.json,
      "Print one JSON document instead of text: \"lay-build 1\" of one plan, \"lay-builds 1\" of several");
  const CommandOption out =
      command.add_option("--out", options.folder,
                         "Write all reports into this folder, or those of several plans into folders in it that are "
                         "named after them; made where missing");
  out.type_name("DIR");
  guard_inputs(command, {plan}, {{out, {}, false, [&options] { return files_written(options); }}});
  add_wind_options(command, options.settings);
  add_draws_option(command, options.draws);
  command.add_option("--angle", options.reports.section_angle_deg, "Spool angle of the section picture, in degrees")
      .type_name("DEG")
      .check(number_between(-360.0, 360.0))
      .needs(out)
      .capture_default_str();
}

}  // namespace

void add_lay_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("lay", "Lay plans: print the summary, the layers and the findings");
  const auto options = std::make_shared<LayOptions>();
  add_options(command, *options);
  command.footer(fmt::format(
      "With --out, these files are written, and none of them where it fails or is stopped:\n  {}\n"
      "Where summary.txt stands, all of them are there and of one wind. What a killed run leaves is put in\n"
      "place by the next one into that folder.\n\n"
      "Several plans end with a table of all: verdict, turns, length, outer diameter, rim clearance, and what "
      "decides. With\n"
      "--out it stands alone, since the summaries are in the folders. The exit code is that of the plan that fared "
      "worst.\n\n"
      "Examples:\n"
      "  laywright lay samples/even.lay.toml\n"
      "  laywright lay samples/long-dwell.lay.toml --out out/long-dwell\n"
      "  laywright lay samples/even.lay.toml --json > even.json\n"
      "  laywright lay samples/turns-back-*.lay.toml --out out/winds\n",
      fmt::join(report_names, ", ")));
  command.callback([options, &entries, &exit_code] { exit_code = lay_plans(*options, entries); });
}

}  // namespace laywright
