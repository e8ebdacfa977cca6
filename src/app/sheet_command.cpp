#include "app/sheet_command.h"

#include <memory>
#include <new>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "advise/setting_text.h"
#include "app/build_picture.h"
#include "app/command_outcome.h"
#include "app/customer_options.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/several_plans.h"
#include "app/wind_options.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "base/today.h"
#include "paper/customer_sheet.h"
#include "paper/fonts.h"
#include "paper/setup_sheet.h"
#include "paper/sheet_file.h"
#include "plan/plan_file.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

struct SheetOptions {
  std::vector<std::string> plans;
  std::string output;
  std::string paper = "a4";
  std::optional<int> page;
  LaySettings settings;
  std::optional<int> draws;
  CustomerOptions customer;
};

Paper paper_of(const SheetOptions& options) { return options.paper == "letter" ? Paper::letter : Paper::a4; }

CommandOutcome written(const std::string& bytes, const WoundPlan& wound, const WriteBytes& write, Watch& watch) {
  if (bytes.empty()) throw std::bad_alloc();
  if (watch.progress().cancelled()) return {exit_stopped, {}, {}};
  Issues trouble = write(bytes);
  if (!trouble.empty()) return {exit_not_written, std::move(trouble), {}};
  return wound.outcome;
}

CommandOutcome draw_for_customer(const Plan& plan, const SheetOptions& options, const CustomerOrder& customer,
                                 const WoundPlan& wound, const std::string& verdict, SheetFormat format,
                                 const WriteBytes& write, Watch& watch) {
  Progress& progress = watch.progress();
  const SceneSource source(plan, wound.build, wound.measurements);
  watch.begin("filling the spool");
  Result<CustomerTold> told = told_to(customer, plan, source, options.settings, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  if (!told.ok()) return {exit_unsound, told.issues(), {}};
  watch.begin("drawing");
  CustomerTold to = std::move(told).value();
  CustomerSheet sheet{plan, *wound.build, *wound.measurements, std::move(to.letter), std::move(to.summary)};
  if (customer.letter.verdict) sheet.verdict = verdict;
  sheet.paper = paper_of(options);
  if (customer.logo) sheet.logo = on_white(*customer.logo);
  if (wound.build->nodes.size() > 0) sheet.picture = picture_for_customer(source, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  return written(sheet_bytes(format, {draw_customer_sheet(sheet)}, 1), wound, write, watch);
}

CommandOutcome lay_and_draw(const Plan& plan, const SheetOptions& options, const CustomerOrder& customer,
                            SheetFormat format, const WriteBytes& write, Watch& watch, PlanRow* row) {
  Progress& progress = watch.progress();
  WoundPlan wound = lay_and_measure(plan, options.settings, watch);
  if (!wound.outcome.done()) return wound.outcome;
  const TakeupRun run = take_up(plan, *wound.build, *wound.measurements, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};

  const auto verdict = judged_over_draws(plan, options.settings, wound, run, options.draws, watch);
  if (!verdict) return {exit_stopped, {}, {}};

  if (row != nullptr) *row = plan_row(plan, *wound.build, *wound.measurements, *verdict);

  if (options.customer.for_customer())
    return draw_for_customer(plan, options, customer, wound, verdict_line(*verdict), format, write, watch);

  watch.begin("drawing");
  SetupSheet sheet{plan, *wound.build, *wound.measurements, run, paper_of(options), {}};
  sheet.verdict = verdict;
  sheet.drawn_on = today();
  if (wound.build->nodes.size() > 0)
    sheet.picture = picture_for_paper(SceneSource(plan, wound.build, wound.measurements), progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  return written(sheet_bytes(format, draw_setup_sheet(sheet), options.page.value_or(1)), wound, write, watch);
}

int make_sheet(const std::string& file, const SheetOptions& options, const CustomerOrder& customer,
               const EntrySource& entries) {
  const SheetFormat format = sheet_format_of(options.output).value();
  if (options.page && format == SheetFormat::pdf) {
    print_issues({option_issue("--page", fmt::format("{}", *options.page), "a PDF holds both pages",
                               "with .svg and .png only")});
    return exit_command_line;
  }
  const Result<Plan> plan = load_plan(file, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  print_issues(missing_fonts());
  const auto made = [&] {
    Watch watch;
    const auto write = [&](const std::string& bytes) { return write_file_atomically(options.output, bytes); };
    return lay_and_draw(plan.value(), options, customer, format, write, watch, nullptr);
  };
  return conclude(made());
}

int make_sheets(const SheetOptions& options, const EntrySource& entries) {
  Issues issues = misplaced(options.customer);
  if (options.page && options.customer.for_customer())
    issues.push_back(option_issue("--page", fmt::format("{}", *options.page),
                                  "the sheet for a customer has one page", "without --for customer"));
  if (!issues.empty()) {
    print_issues(issues);
    return exit_command_line;
  }
  const Result<CustomerOrder> customer = customer_order(options.customer.letter, options.customer.logo);
  if (!customer.ok()) {
    print_issues(customer.issues());
    return exit_unsound;
  }
  const std::vector<std::string> files = named_once(options.plans);
  if (files.size() == 1) return make_sheet(files.front(), options, customer.value(), entries);
  if (options.page) {
    print_issues({option_issue("--page", fmt::format("{}", *options.page),
                               "the sheets of several plans are PDFs of both pages", "with one plan only")});
    return exit_command_line;
  }
  print_issues(missing_fonts());
  return make_of_several({files, options.output, ".pdf"}, entries,
                         [&](const Plan& plan, const std::string& name, Watch& watch, OfSeveral& several) {
                           return into_folder(options.output, name, [&](const WriteBytes& write) {
                             return lay_and_draw(plan, options, customer.value(), SheetFormat::pdf, write, watch,
                                                 &several.row);
                           });
                         });
}

void add_options(CommandLine command, SheetOptions& options) {
  const CommandOption plan =
      command.add_option("PLAN", options.plans, "Lay plans, *.lay.toml").type_name("").required();
  const CommandOption file =
      command
          .add_option("-o,--output", options.output,
                      "The sheet: a PDF of two pages (for a customer, of one), or one page of "
                      "it as SVG or PNG; of several plans a folder for PDFs "
                      "that are named after them, made where missing")
          .type_name("FILE.pdf|svg|png")
          .required();
  add_customer_options(command, options.customer, false);
  guard_inputs(
      command, {plan, options.customer.logo_option},
      {{file, {".pdf", ".svg", ".png"}, true, [&options] { return names_in_folder(options.plans, ".pdf"); }}});
  command.add_option("--paper", options.paper, "a4 or letter")
      .type_name("SIZE")
      .check(one_of({"a4", "letter"}))
      .capture_default_str();
  command.add_option("--page", options.page, "Which page, 1 or 2, for SVG and PNG (the first by default)")
      .type_name("N")
      .check(number_between(1, setup_pages));
  add_wind_options(command, options.settings);
  add_draws_option(command, options.draws);
}

}  // namespace

void add_sheet_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command = program.add_command("sheet", "Lay plans and make the set-up sheets for the winder");
  const auto options = std::make_shared<SheetOptions>();
  add_options(command, *options);
  command.footer(
      "For a customer it is one page: the filled spool with its diameters, how much it holds as laywright capacity "
      "tells, how\n"
      "thick it is, the margin of both, and what you write.\n"
      "Several plans end with a table of all; the exit code is that of the plan that fared worst.\n\n"
      "Examples:\n"
      "  laywright sheet samples/magnet-wire.lay.toml -o magnet-wire.pdf\n"
      "  laywright sheet samples/magnet-wire.lay.toml -o magnet-wire.pdf --paper letter\n"
      "  laywright sheet samples/even.lay.toml -o even-2.png --page 2\n"
      "  laywright sheet samples/magnet-wire.lay.toml -o offer.pdf --for customer --sender \"Corder & Sons\"\n"
      "  laywright sheet samples/turns-back-*.lay.toml -o out/sheets");
  command.callback([options, &entries, &exit_code] { exit_code = make_sheets(*options, entries); });
}

}  // namespace laywright
