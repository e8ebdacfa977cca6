#include "app/advice_options.h"

#include <utility>

#include <fmt/format.h>

#include "app/exit_code.h"
#include "app/output.h"

namespace laywright {
namespace {

// A negative seed would be read as a huge one.
std::string refuse_sign(const std::string& seed) {
  return seed.starts_with('-') ? "a seed is a whole number, 0 or more" : "";
}

}  // namespace

void add_advice_options(CLI::App& command, AdviceOptions& options, const char* format) {
  command.add_option("PLAN", options.plan, "The lay plan, *.lay.toml")->type_name("")->required();
  command.add_flag("--json", options.json,
                   fmt::format("Print one JSON document (format \"{}\") instead of text", format));
  command.add_option("--seed", options.lay.seed, "Seed of all scatter")
      ->type_name("N")
      ->check(CLI::Validator(refuse_sign, ""))
      ->capture_default_str();
  command
      .add_option("--fidelity", options.lay.fidelity, "Multiplies the stations per turn of every build (0.05 to 8)")
      ->type_name("F")
      ->check(CLI::Range(0.05, 8.0).description(""))
      ->capture_default_str();
  command
      .add_option("--threads", options.threads, "How many builds are laid at once; the result is the same for any")
      ->type_name("N")
      ->check(CLI::Range(1, 1024).description(""))
      ->capture_default_str();
}

Result<LaidPlan> lay_and_measure(const Plan& plan, const LaySettings& settings, Progress& progress) {
  Result<Build> build = lay(plan, settings, progress);
  if (!build.ok()) return build.issues();
  Measurements measurements = measure(plan, build.value(), progress);
  return LaidPlan{std::move(build).value(), std::move(measurements)};
}

int told(const Issues& issues, bool stopped) {
  if (stopped) {
    fmt::print(stderr, "stopped; nothing was written\n");
    return exit_stopped;
  }
  print_issues(issues);
  return exit_unsound;
}

}  // namespace laywright
