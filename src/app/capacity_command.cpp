#include "app/capacity_command.h"

#include <memory>
#include <optional>

#include <fmt/format.h>

#include "advise/capacity.h"
#include "answers/capacity_report.h"
#include "app/advice_options.h"
#include "app/exit_code.h"
#include "app/output.h"
#include "app/watch.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

int run(const AdviceOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  std::optional<Watch> watch(std::in_place);
  watch->begin("laying");
  const Result<Capacity> found = capacity(plan.value(), options.lay, watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!found.ok()) return conclude(found.issues(), stopped);
  return print(options.json ? capacity_json(plan.value(), found.value())
                            : capacity_text(plan.value(), found.value()))
             ? exit_done
             : exit_not_written;
}

}  // namespace

void add_capacity_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("capacity", "How much fiber fits, by the model and by handbook formulas");
  const auto options = std::make_shared<AdviceOptions>();
  add_advice_options(command, *options, "lay-capacity 1");
  command.footer(
      "The plan is wound on until the fiber comes as near to the rim as the plan's limits.rim_clearance.\n\n"
      "Example:\n"
      "  laywright capacity samples/even.lay.toml\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
