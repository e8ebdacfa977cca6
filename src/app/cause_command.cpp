#include "app/cause_command.h"

#include <memory>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "advise/cause.h"
#include "answers/cause_report.h"
#include "app/advice_options.h"
#include "app/exit_code.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/watch.h"
#include "app/wound_plan.h"
#include "base/readable.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct CauseOptions : AdviceOptions {
  std::size_t finding = 1;
};

struct Answer {
  Issues issues;
  std::size_t findings = 0;
  std::optional<Explanation> explanation;
};

Answer explain_finding(const Plan& plan, const CauseOptions& options, Watch& watch) {
  const WoundPlan wound = lay_and_measure(plan, options.lay, watch);
  if (!wound.outcome.done()) return {wound.outcome.issues, 0, {}};
  const auto& findings = wound.measurements->findings;
  if (options.finding > findings.size()) return {{}, findings.size(), {}};
  watch.begin("trying");
  Result<Explanation> explanation = explain(plan, *wound.build, *wound.measurements, findings[options.finding - 1],
                                            {options.lay, options.threads}, watch.progress());
  if (!explanation.ok()) return {explanation.issues(), findings.size(), {}};
  return {{}, findings.size(), std::move(explanation).value()};
}

int run(const CauseOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  std::optional<Watch> watch(std::in_place);
  const Answer answer = explain_finding(plan.value(), options, *watch);
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (stopped || !answer.issues.empty()) return conclude(answer.issues, stopped);
  if (answer.explanation) {
    const std::string text = options.json ? cause_json(plan.value(), *answer.explanation, options.finding)
                                          : cause_text(plan.value(), *answer.explanation, options.finding);
    return print(text) ? exit_done : exit_not_written;
  }
  if (answer.findings == 0 && !options.json) {
    return print(fmt::format("{}: nothing is found on this build.\n", visible(options.plan))) ? exit_done
                                                                                              : exit_not_written;
  }
  tell(fmt::format("error: there is no finding {}; the build has {} (laywright lay {} lists them)\n",
                   options.finding, answer.findings, visible(options.plan)));
  return exit_command_line;
}

}  // namespace

void add_cause_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("cause", "Why a finding is there: tries one setting after another");
  const auto options = std::make_shared<CauseOptions>();
  add_advice_options(command, *options, "lay-cause 1");
  command
      .add_option("--finding", options->finding, "Which finding, by its number in laywright lay; 1 is the gravest")
      .type_name("N")
      .check(number_between(std::size_t{1}, std::size_t{1'000'000}))
      .capture_default_str();
  command.footer(
      "The plan is laid again with one setting moved at a time, further and further, until the finding is\n"
      "gone or half of it is; where no single setting does, two are moved together.\n\n"
      "Examples:\n"
      "  laywright cause samples/turns-back-early.lay.toml\n"
      "  laywright cause samples/long-dwell.lay.toml --finding 2 --json\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
