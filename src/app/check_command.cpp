#include "app/check_command.h"

#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/exit_code.h"
#include "app/output.h"
#include "base/readable.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

int check_plans(const std::vector<std::string>& files) {
  std::string sound;
  bool all_sound = true;
  for (const std::string& file : files) {
    const Result<Plan> plan = load_plan(file);
    print_issues(plan.issues());
    if (plan.ok()) {
      sound += fmt::format("{}: sound{}\n", visible(file), plan.issues().empty() ? "" : ", with warnings");
    } else {
      all_sound = false;
    }
  }
  if (!print(sound)) return exit_not_written;
  return all_sound ? exit_done : exit_unsound;
}

}  // namespace

void add_check_command(CLI::App& program, int& exit_code) {
  CLI::App* command = program.add_subcommand("check", "Check lay plans and say what is wrong with them");
  const auto files = std::make_shared<std::vector<std::string>>();
  command->add_option("PLAN", *files, "Lay plans, *.lay.toml")->type_name("")->required();
  command->footer(
      "Every issue is printed with its file, line and key. Returns 0 only if all plans are sound,\n"
      "1 otherwise.\n\n"
      "Example:\n"
      "  laywright check samples/*.lay.toml\n");
  command->callback([files, &exit_code] { exit_code = check_plans(*files); });
}

}  // namespace laywright
