#include "app/payoff_command.h"

#include <memory>
#include <string>

#include "app/command_outcome.h"
#include "app/output.h"
#include "app/watch.h"
#include "app/wind_options.h"
#include "base/quantity.h"
#include "figures/payoff_report.h"
#include "lay/lay.h"
#include "payoff/payoff.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct PayoffOptions {
  std::string plan, end, eye;
  bool json = false;
  LaySettings lay;
};

PayoffSettings settings_of(const PayoffOptions& options) {
  PayoffSettings settings;
  if (options.end == "left") settings.way = DrawOff::over_left;
  if (options.end == "right") settings.way = DrawOff::over_right;
  if (!options.eye.empty()) settings.eye_mm = parse_quantity(options.eye, Dimension::length).quantity->value;
  return settings;
}

CommandOutcome unwind_plan(const Plan& plan, const PayoffOptions& options) {
  Watch watch;
  Progress& progress = watch.progress();
  watch.begin("laying");
  const Result<Build> build = lay(plan, options.lay, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  if (!build.ok()) return {exit_unsound, build.issues(), {}};
  watch.begin("unwinding");
  const PayoffRun run = pay_off(plan, build.value(), settings_of(options), progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  return {exit_done, build.issues(),
          options.json ? payoff_json(plan, build.value(), run) : payoff_text(plan, build.value(), run)};
}

int run(const PayoffOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  return conclude(unwind_plan(plan.value(), options));
}

std::string check_distance(const std::string& text) {
  const ParsedQuantity length = parse_quantity(text, Dimension::length);
  if (length.quantity && length.quantity->value > 0.0) return "";
  return "a length with its unit is due, more than nothing, like \"1.5 m\"";
}

}  // namespace

void add_payoff_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("payoff", "Unwind a build: where it catches, and how hard it is to be drawn");
  const auto options = std::make_shared<PayoffOptions>();
  command.add_option("PLAN", options->plan, "The lay plan, *.lay.toml").type_name("").required();
  command.add_flag("--json", options->json, "Print one JSON document (format \"lay-payoff 1\") instead of text");
  const CommandOption end =
      command
          .add_option("--over-end", options->end,
                      "Draw it over the left or the right end of a spool that stands, instead of off the "
                      "side of one that rolls")
          .type_name("SIDE")
          .check(one_of({"left", "right"}));
  command
      .add_option(
          "--eye", options->eye,
          "From the spool's axis to the eye over its middle, as in \"1.5 m\"; without it 20 times the inside width")
      .type_name("LENGTH")
      .check(check_distance)
      .excludes(end);
  add_wind_options(command, options->lay);
  command.footer(
      "The fiber is drawn off from the last turn to the first. What needs more than the plan's\n"
      "limits.payoff_force, in times the pull of winding, is a catch.\n\n"
      "Examples:\n"
      "  laywright payoff samples/even.lay.toml\n"
      "  laywright payoff samples/even.lay.toml --over-end left\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
