#include "app/new_command.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "advise/begin.h"
#include "app/advice_options.h"
#include "app/exit_code.h"
#include "app/new_questions.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/questions.h"
#include "app/watch.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "base/readable.h"
#include "figures/new_plan.h"
#include "plan/plan_name.h"
#include "plan/plan_values.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

struct NewOptions {
  std::string file;
  NewRequest request;
  std::vector<std::string> set;  // KEY=VALUE
  bool list = false, replace = false, best = false;
  BeginSettings begin;
};

int list_entries(const Catalogues& catalogues) {
  const Shelf shelf = catalogues.all();
  print_issues(shelf.issues);
  std::string text;
  for (const EntryKind kind : entry_kinds)
    text += fmt::format("{}{}s\n{}", text.empty() ? "" : "\n", name_of(kind), entries_text(shelf, kind));
  return print(text) ? exit_done : exit_not_written;
}

bool is_there(const std::string& file) {
  std::error_code error;
  return std::filesystem::is_regular_file(file, error) || std::filesystem::is_directory(file, error);
}

int refuse_existing(const std::string& file) {
  tell(fmt::format("error: {}: is there already; choose another name, or --replace it\n", visible(file)));
  return exit_command_line;
}

// The issues of a request are about options, not about keys of a plan.
int refuse(const Issues& issues) {
  for (Issue issue : issues) {
    if (issue.file.empty() && field_at(PlanDraft{}, issue.key) == nullptr) {
      std::string option = issue.key;
      for (char& c : option) c = c == '_' ? '-' : c;
      issue.key = fmt::format("--{}", option);
    }
    print_issues({issue});
  }
  return exit_command_line;
}

// "traverse.pitch 0.255 mm, ..."
std::string settings_text(const PlanDraft& draft) {
  std::string text;
  for (const auto& [path, value] : proposed_settings(draft)) text += fmt::format("  {:<26}{}\n", path, value);
  return text;
}

int write(const NewOptions& options, const Beginning& beginning, const std::set<std::string>& assumed) {
  const std::string text = new_plan_text(beginning.draft, {beginning.verdict, assumed});
  if (options.file.empty()) return print_content(text) ? exit_done : exit_not_written;
  // It may have come to be there while the wind was laid.
  if (!options.replace && is_there(options.file)) return refuse_existing(options.file);
  const Issues trouble = write_file_atomically(options.file, text);
  print_issues(trouble);
  if (!trouble.empty()) return exit_not_written;
  return print(fmt::format("{}: {}\n{}", visible(options.file), verdict_line(beginning.verdict),
                           settings_text(beginning.draft)))
             ? exit_done
             : exit_not_written;
}

int propose(const NewOptions& options, NewDraft made, bool asks) {
  BeginSettings settings = options.begin;
  settings.given = made.given;
  std::optional<Watch> watch(std::in_place);
  watch->begin("searching");
  const Result<Beginning> beginning = begin_plan(std::move(made.draft), settings, watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!beginning.ok()) return conclude(beginning.issues(), stopped);
  const WindVerdict& verdict = beginning.value().verdict;
  if (verdict.grade != Grade::good) {
    tell(fmt::format("No good wind was found. The best:\n{}{}\n", settings_text(beginning.value().draft),
                     verdict_line(verdict)));
    if (!options.best && !(asks && ask_yes("Write it all the same?"))) {
      if (!asks) tell("nothing was written; --best writes it all the same\n");
      return exit_unsound;
    }
  }
  return write(options, beginning.value(), made.assumed);
}

int run(NewOptions options, const Catalogues& catalogues) {
  if (options.list) return list_entries(catalogues);
  for (const std::string& each : options.set) {
    const std::size_t equals = each.find('=');
    options.request.set.emplace_back(each.substr(0, equals),
                                     equals == std::string::npos ? "" : each.substr(equals + 1));
  }
  const bool complete =
      !options.request.spool.empty() && !options.request.fiber.empty() && !options.request.length.empty();
  const bool asks = !complete && can_ask();
  const bool in_the_way = !options.replace && is_there(options.file);
  if (asks && in_the_way) return refuse_existing(options.file);
  if (asks && !ask_for_rest(options.request, catalogues)) return conclude({}, true);
  Result<NewDraft> made = draft_of(options.request, catalogues);
  if (!made.ok()) return refuse(made.issues());
  if (in_the_way) return refuse_existing(options.file);
  if (asks && options.file.empty()) {
    const TerminalQuestion question{
        "File to write", "  what does not end with .toml gets .lay.toml\n", "", [](const std::string& answer) {
          const std::string file = with_plan_ending(answer).string();
          return is_there(file) ? fmt::format("{} is there already; choose another name", file) : std::string();
        }};
    const std::optional<std::string> answer = ask(question);
    if (!answer) return conclude({}, true);
    options.file = with_plan_ending(*answer).string();
  }
  return propose(options, std::move(made).value(), asks);
}

}  // namespace

void add_new_command(CommandLine program, const Catalogues& catalogues, int& exit_code) {
  const CommandLine command =
      program.add_command("new", "Write a plan to begin with: settings that give a good wind, laid and judged");
  const auto options = std::make_shared<NewOptions>();
  const CommandOption file =
      command.add_option("FILE", options->file, "The plan, *.lay.toml; without it, it is printed").type_name("");
  command.add_option("--spool", options->request.spool, "A spool of a catalogue, or barrel x flange x inside width")
      .type_name("NAME|SIZES");
  command.add_option("--fiber", options->request.fiber, "A fiber of a catalogue, or its diameter")
      .type_name("NAME|SIZE");
  command.add_option("--length", options->request.length, "How much fiber").type_name("LENGTH");
  command.add_option("--machine", options->request.machine, "A machine of a catalogue").type_name("NAME");
  command.add_option("--free-length", options->request.free_length, "From the guide to the spool; without it 50 mm")
      .type_name("LENGTH");
  command.add_option("--friction", options->request.friction, "Of the fiber on itself; without it 0.5")
      .type_name("NUMBER");
  command.add_option("--tension", options->request.tension, "Of the fiber while it is wound").type_name("FORCE");
  command.add_option("--line-speed", options->request.line_speed, "Of the fiber").type_name("SPEED");
  command.add_option("--title", options->request.title, "Of the plan").type_name("TEXT");
  command.add_option("--set", options->set, "Any other key of the plan, kept as it is; several times for several")
      .type_name("KEY=VALUE");
  command.add_flag("--list", options->list, "Tell the spools, fibers and machines of all catalogues, and stop");
  command.add_flag("--replace", options->replace, "Write over a file that is there already");
  command.add_flag("--best", options->best, "Write the best wind that was found, even where it is not good");
  command.add_option("--trials", options->begin.trials, "How many winds the search lays where usual settings fail")
      .type_name("N")
      .check(number_between(20, 100'000))
      .capture_default_str();
  command
      .add_option("--threads", options->begin.threads,
                  "How many builds are laid at once; the result is the same for any")
      .type_name("N")
      .check(number_between(1, 1024))
      .capture_default_str();
  guard_inputs(command, {}, {{file, {".toml"}}});
  command.footer(
      "On a terminal it asks for what is not given. Pitch, stops and reversal are proposed; the wind is laid and\n"
      "judged as several draws, and where usual settings do not give a good one, better ones are searched for. "
      "Sizes\n"
      "are understood as people write them: 1 1/4 in, 3\", 0,26 mm.\n"
      "Returns 1, and writes nothing, where no good wind was found.\n\n"
      "Examples:\n"
      "  laywright new my-spool.lay.toml\n"
      "  laywright new small.lay.toml --spool \"63 x 100 x 80 mm\" --fiber \"0.245 mm\" --length \"2 km\"\n"
      "  laywright new --list");
  command.callback([options, &catalogues, &exit_code] { exit_code = run(*options, catalogues); });
}

}  // namespace laywright
