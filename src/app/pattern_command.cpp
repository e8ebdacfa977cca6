#include "app/pattern_command.h"

#include <memory>
#include <string>

#include "app/exit_code.h"
#include "app/number_option.h"
#include "app/output.h"
#include "figures/pattern_report.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct PatternOptions {
  std::string plan;
  bool json = false;
  double gap_d = usual_gap_d;
};

int run(const PatternOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  const PatternTable table = patterns(plan.value(), options.gap_d);
  return print(options.json ? pattern_json(plan.value(), table) : pattern_text(plan.value(), table))
             ? exit_done
             : exit_not_written;
}

}  // namespace

void add_pattern_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("pattern", "Ribbons of a crossed wind, and pitches and stops without them");
  const auto options = std::make_shared<PatternOptions>();
  command.add_option("PLAN", options->plan, "The lay plan, *.lay.toml").type_name("").required();
  command.add_flag("--json", options->json, "Print one JSON document (format \"lay-pattern 1\") instead of text");
  command
      .add_option("--gap", options->gap_d,
                  "Gap between fibers of a close pattern, in fiber diameters, from 0.02 to 0.5")
      .type_name("D")
      .check(number_between(least_gap_d, most_gap_d))
      .capture_default_str();
  command.footer(
      "For winds whose pitch is coarser than two fiber diameters. Where the spool turns a whole number of\n"
      "times, or nearly, while the guide goes to the other stop and comes back, each double stroke lies\n"
      "on the one before: a ribbon. At a simple fraction, up to quarters, it lies on one a few double\n"
      "strokes before. Nothing is laid: these are closed forms, and quick.\n\n"
      "Example:\n"
      "  laywright pattern samples/whole-ratio.lay.toml\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
