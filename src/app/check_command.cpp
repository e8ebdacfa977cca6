#include "app/check_command.h"

#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "app/exit_code.h"
#include "app/output.h"
#include "app/several_plans.h"
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

// Entries that it names, and what its machine's dials are set to.
std::string told_of_sound(const Plan& plan) {
  std::string text;
  for (const NamedEntry& entry : plan.draft().entries) text += told_of(entry, plan.asked());
  if (const std::string dialled = dial_table(plan); !dialled.empty()) text += "  Set on the machine:\n" + dialled;
  return text;
}

const char* soundness(const Result<Plan>& plan) {
  if (!plan.ok()) return "not sound";
  return plan.issues().empty() ? "sound" : "sound, with warnings";
}

int check_plan(const std::string& file, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(file, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  return print(fmt::format("{}: {}\n{}", visible(file), soundness(plan), told_of_sound(plan.value())))
             ? exit_done
             : exit_not_written;
}

// What they name of catalogues, and then the table.
int check_plans(const std::vector<std::string>& files, const EntrySource& entries) {
  std::string text;
  std::vector<PlanRow> rows;
  int code = exit_done;
  for (const std::string& file : files) {
    const Result<Plan> plan = load_plan(file, &entries);
    print_issues(plan.issues());
    rows.push_back({file, soundness(plan), reason_of(plan.issues()), {}, {}});
    if (!plan.ok()) code = exit_unsound;
    if (!plan.ok()) continue;
    if (const std::string more = told_of_sound(plan.value()); !more.empty())
      text += fmt::format("{}\n{}\n", visible(file), more);
  }
  return print(text + plan_table(rows)) ? code : exit_not_written;
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
  if (!options.flatten) {
    const std::vector<std::string> files = named_once(options.files);
    return files.size() == 1 ? check_plan(files.front(), entries) : check_plans(files, entries);
  }
  if (options.files.size() == 1) return flatten_plan(options.files.front(), entries);
  tell("error: --flatten prints one plan; give one\n");
  return exit_command_line;
}

}  // namespace

void add_check_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command = program.add_command("check", "Check lay plans and say what is wrong with them");
  const auto options = std::make_shared<CheckOptions>();
  command.add_option("PLAN", options->files, "Lay plans, *.lay.toml").type_name("").required();
  command.add_flag("--flatten", options->flatten,
                   "Print the plan with what it names of catalogues written in, so that it stands alone");
  command.footer(
      "Every issue is printed with its file, line and key, and of each catalogue entry that a sound plan names "
      "where\n"
      "it stands; where its machine has dials, what each is set to, and what that gives. Several plans end with a\n"
      "table of all. Returns 0 only if all plans are sound, 1 otherwise.\n\n"
      "Examples:\n"
      "  laywright check samples/*.lay.toml\n"
      "  laywright check --flatten my-spool.lay.toml > alone.lay.toml");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright
