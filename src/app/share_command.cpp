#include "app/share_command.h"

#include <cstdint>
#include <memory>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "app/command_outcome.h"
#include "app/customer_options.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/page_maker.h"
#include "app/wound_plan.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "paint/offscreen_context.h"
#include "paper/fonts.h"
#include "plan/plan_file.h"
#include "web/share_page.h"

namespace laywright {
namespace {

struct ShareOptions {
  std::string plan, file;
  LaySettings settings;
  CustomerOptions customer;
};

CommandOutcome lay_and_share(const std::string& plan_text, const Plan& plan, const ShareOptions& options,
                             const CustomerOrder* customer) {
  Watch watch;
  Progress& progress = watch.progress();
  WoundPlan wound = lay_and_measure(plan, options.settings, watch);
  if (!wound.outcome.done()) return wound.outcome;

  watch.begin("drawing");
  const SceneSource source(plan, wound.build, wound.measurements);
  const Result<std::string> page = make_share_page(
      plan_text, plan, source, [] { return OffscreenContext::open(); }, customer, progress);
  if (progress.cancelled()) return {exit_stopped, {}, {}};
  if (!page.ok()) return {exit_unsound, page.issues(), {}};
  const Issues trouble = write_file_atomically(options.file, page.value());
  if (!trouble.empty()) return {exit_not_written, trouble, {}};
  return wound.outcome;
}

int share(const ShareOptions& options, const EntrySource& entries) {
  if (const Issues issues = misplaced(options.customer); !issues.empty()) {
    print_issues(issues);
    return exit_command_line;
  }
  const Result<std::string> text = read_plan_text(options.plan);
  if (!text.ok()) {
    print_issues(text.issues());
    return exit_unsound;
  }
  const Result<Plan> plan = plan_from_text(text.value(), options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  if (share_page_template().empty()) {
    tell(
        "error: this program was built without the share page; configure it with -DLAYWRIGHT_SHARE_PAGE=ON "
        "(Emscripten is needed) and build it again\n");
    return exit_not_written;
  }
  const Result<CustomerOrder> customer = customer_order(options.customer.letter, options.customer.logo);
  if (!customer.ok()) {
    print_issues(customer.issues());
    return exit_unsound;
  }
  print_issues(missing_fonts());
  return conclude(lay_and_share(text.value(), plan.value(), options,
                                options.customer.for_customer() ? &customer.value() : nullptr));
}

constexpr std::uint64_t greatest_seed = 999'999'999'999'999;  // JavaScript counts exactly that far

}  // namespace

void add_share_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("share", "Lay a plan and write it as a page that opens in any browser, offline");
  const auto options = std::make_shared<ShareOptions>();
  const CommandOption plan =
      command.add_option("PLAN", options->plan, "The lay plan, *.lay.toml").type_name("").required();
  const CommandOption file =
      command.add_option("-o,--output", options->file, "The page, one HTML file").type_name("FILE.html").required();
  command.add_option("--seed", options->settings.seed, "Seed of all scatter; the same seed gives the same build")
      .type_name("N")
      .check(number_between(std::uint64_t{0}, greatest_seed))
      .capture_default_str();
  add_customer_options(command, options->customer, true);
  guard_inputs(command, {plan, options->customer.logo_option}, {{file, {".html", ".htm"}}});
  command.footer(
      "The page shows the spool in the round, cut, peeled and played, and lays it anew when its settings are "
      "changed.\n"
      "It holds the whole plan, comments included, and loads nothing from anywhere: it can be mailed, and opened\n"
      "without a network.\n"
      "For a customer it tells how much the spool holds, as laywright capacity does, and how thick it is, with the\n"
      "margin; what the plan has of notes, comments, order and dials is left out, and findings are folded away. Of "
      "a\n"
      "page for a customer, one page is printed.\n\n"
      "Examples:\n"
      "  laywright share samples/even.lay.toml -o even.html\n"
      "  laywright share samples/even.lay.toml -o offer.html --for customer --customer \"Rowan Mills\" --logo "
      "mark.png");
  command.callback([options, &entries, &exit_code] { exit_code = share(*options, entries); });
}

}  // namespace laywright
