#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <new>
#include <sstream>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "app/calibrate_command.h"
#include "app/capacity_command.h"
#include "app/catalogue_folders.h"
#include "app/cause_command.h"
#include "app/check_command.h"
#include "app/command_line.h"
#include "app/desktop.h"
#include "app/exit_code.h"
#include "app/export_command.h"
#include "app/fit_command.h"
#include "app/follow_command.h"
#include "app/improve_command.h"
#include "app/lay_command.h"
#include "app/new_command.h"
#include "app/open_command.h"
#include "app/order_command.h"
#include "app/output.h"
#include "app/pattern_command.h"
#include "app/payoff_command.h"
#include "app/picture_command.h"
#include "app/profile_command.h"
#include "app/record_command.h"
#include "app/share_command.h"
#include "app/sheet_command.h"
#include "app/study_command.h"
#include "base/readable.h"
#include "base/text_distance.h"

namespace laywright {
namespace {

// The first word that is neither an option nor a command where a command should stand; empty where there is one.
std::string word_for_command(const CLI::App& program) {
  if (!program.get_subcommands().empty()) return "";
  const std::vector<std::string> unknown = program.remaining();
  const auto word = std::find_if(unknown.begin(), unknown.end(), [](const auto& each) { return each[0] != '-'; });
  return word == unknown.end() ? "" : *word;
}

// What a person who typed that probably meant.
std::string meant(const CLI::App& program, const std::string& word) {
  if (std::filesystem::is_regular_file(word)) return fmt::format("to open a plan: laywright open {}", visible(word));
  std::vector<std::string> commands;
  for (const CLI::App* command : program.get_subcommands([](const CLI::App*) { return true; }))
    commands.push_back(command->get_name());
  const std::string nearest = nearest_word(word, commands);
  return nearest.empty() ? fmt::format("the commands are {}", fmt::join(commands, ", "))
                         : fmt::format("did you mean {}?", nearest);
}

int open_window(std::shared_ptr<const Catalogues> entries) {
  DesktopOptions options;
  options.entries = std::move(entries);
  return run_desktop(options);
}

// Help and version, or what is wrong with the command line; the exit code.
int end_of_parsing(CLI::App& program, const CLI::ParseError& stop) {
  const std::string word = word_for_command(program);
  if (stop.get_exit_code() != 0 && !word.empty()) {
    tell(fmt::format("error: \"{}\" is no command of laywright; {}\nRun with --help for more information.\n",
                     visible(word), meant(program, word)));
    return exit_command_line;
  }
  program.failure_message([](const CLI::App*, const CLI::Error& error) {
    return visible(error.what()) + "\nRun with --help for more information.\n";
  });
  std::ostringstream out, err;
  const bool done = program.exit(stop, out, err) == 0;
  tell(err.str());
  if (!print(out.str())) return exit_not_written;
  return done ? exit_done : exit_command_line;
}

}  // namespace
}  // namespace laywright

int main(int argc, char** argv) {
  using namespace laywright;
  CLI::App program{"Computes how a winder lays fiber onto a flanged spool, turn by turn.", "laywright"};
  program.set_version_flag("--version", "laywright " LAYWRIGHT_VERSION, "Print the version and exit");
  program.set_help_flag("-h,--help", "Print this help and exit");
  program.footer(
      "Without a command the window opens.\n\n"
      "Start with:\n"
      "  laywright open samples/even.lay.toml\n"
      "  laywright check samples/even.lay.toml\n"
      "  laywright lay samples/even.lay.toml\n"
      "  laywright picture samples/even.lay.toml -o even.png\n"
      "  laywright sheet samples/even.lay.toml -o even.pdf\n\n"
      "Returns 0 when done, 1 when a plan is not sound, 2 for a wrong command line, 3 when a result could not be\n"
      "written, no picture drawn or no window opened, 130 when stopped with Ctrl-C.\n");

  program.fallthrough();  // --catalogue may stand behind a command
  const CommandLine commands(program);
  const std::shared_ptr<const Catalogues> catalogues = add_catalogues(commands);

  int exit_code = exit_done;
  add_new_command(commands, *catalogues, exit_code);
  add_check_command(commands, *catalogues, exit_code);
  add_lay_command(commands, *catalogues, exit_code);
  add_picture_command(commands, *catalogues, exit_code);
  add_share_command(commands, *catalogues, exit_code);
  add_sheet_command(commands, *catalogues, exit_code);
  add_export_command(commands, *catalogues, exit_code);
  add_cause_command(commands, *catalogues, exit_code);
  add_improve_command(commands, *catalogues, exit_code);
  add_fit_command(commands, *catalogues, exit_code);
  add_follow_command(commands, *catalogues, exit_code);
  add_profile_command(commands, *catalogues, exit_code);
  add_calibrate_command(commands, exit_code);
  add_capacity_command(commands, *catalogues, exit_code);
  add_order_command(commands, *catalogues, exit_code);
  add_record_command(commands, *catalogues, exit_code);
  add_pattern_command(commands, *catalogues, exit_code);
  add_payoff_command(commands, *catalogues, exit_code);
  add_study_command(commands, *catalogues, exit_code);
  add_open_command(commands, catalogues, exit_code);
  program.require_subcommand(0, 1);
  try {
    program.parse(argc, argv);
    if (program.get_subcommands().empty()) exit_code = open_window(catalogues);
  } catch (const CLI::ParseError& stop) {
    return end_of_parsing(program, stop);
  } catch (const std::bad_alloc&) {
    tell("error: there is too little memory for this wind; try a lower --fidelity or a shorter wind\n");
    return exit_not_written;
  } catch (const std::system_error& error) {
    if (error.code() == std::errc::resource_unavailable_try_again) {  // a thread could not be started
      tell("error: there is too little memory, or too much else is running; try fewer --threads\n");
    } else {
      tell(fmt::format("error: the system refuses what the program needs: {}\n", error.code().message()));
    }
    return exit_not_written;
  }
  // A warning that nobody could read.
  return exit_code == exit_done && std::ferror(stderr) != 0 ? int{exit_not_written} : exit_code;
}
