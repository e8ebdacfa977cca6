#include "app/check_command.h"

#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/exit_code.h"
#include "app/output.h"
#include "base/readable.h"
#include "figures/dial_words.h"
#include "plan/fields.h"
#include "plan/flatten.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

struct CheckOptions {
  std::vector<std::string> files;
  bool flatten = false;
};

// Where the values of an entry come from, and which of them the plan overrides.
std::string told_of(const NamedEntry& entry, const PlanDraft& draft) {
  std::string own;
  for (const auto& field : plan_fields()) {
    const auto given = entry.values.find(field.path());
    if (given == entry.values.end() || field.get(draft) == given->second.value) continue;
    own += fmt::format("{}{}", own.empty() ? "; the plan's own: " : ", ", field.path());
  }
  return fmt::format("  {} \"{}\" from {}:{}{}\n", name_of(entry.kind), visible(entry.name), visible(entry.file),
                     entry.line, own);
}

int check_plans(const std::vector<std::string>& files, const EntrySource& entries) {
  std::string sound;
  bool all_sound = true;
  for (const std::string& file : files) {
    const Result<Plan> plan = load_plan(file, &entries);
    print_issues(plan.issues());
    if (plan.ok()) {
      sound += fmt::format("{}: sound{}\n", visible(file), plan.issues().empty() ? "" : ", with warnings");
      for (const NamedEntry& entry : plan.value().draft().entries) sound += told_of(entry, plan.value().asked());
      if (const std::string dialled = dial_table(plan.value()); !dialled.empty())
        sound += "  Set on the machine:\n" + dialled;
    } else {
      all_sound = false;
    }
  }
  if (!print(sound)) return exit_not_written;
  return all_sound ? exit_done : exit_unsound;
}

int flatten_plan(const std::string& file, const EntrySource& entries) {
  const Result<std::string> text = read_plan_text(file);
  print_issues(text.issues());
  if (!text.ok()) return exit_unsound;
  const Result<Plan> plan = plan_from_text(text.value(), file, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  return print_content(flattened(text.value(), plan.value().asked())) ? exit_done : exit_not_written;
}

int run(const CheckOptions& options, const EntrySource& entries) {
  if (!options.flatten) return check_plans(options.files, entries);
  if (options.files.size() == 1) return flatten_plan(options.files.front(), entries);
  tell("error: --flatten prints one plan; give one\n");
  return exit_command_line;
}

}  // namespace

void add_check_command(CLI::App& program, const EntrySource& entries, int& exit_code) {
  CLI::App* command = program.add_subcommand("check", "Check lay plans and say what is wrong with them");
  const auto options = std::make_shared<CheckOptions>();
  command->add_option("PLAN", options->files, "Lay plans, *.lay.toml")->type_name("")->required();
  command->add_flag("--flatten", options->flatten,
                    "Print the plan with what it names of catalogues written in, so that it stands alone");
  command->footer(
      "Every issue is printed with its file, line and key, and of each catalogue entry that a sound plan names "
      "where\n"
      "it stands; where its machine has dials, what each is set to, and what that gives. Returns 0 only if all "
      "plans are sound, 1 otherwise.\n\n"
      "Examples:\n"
      "  laywright check samples/*.lay.toml\n"
      "  laywright check --flatten my-spool.lay.toml > alone.lay.toml");
  command->callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
