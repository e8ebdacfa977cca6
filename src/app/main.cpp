#include <cstdio>
#include <new>
#include <sstream>
#include <system_error>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "app/capacity_command.h"
#include "app/cause_command.h"
#include "app/check_command.h"
#include "app/desktop.h"
#include "app/exit_code.h"
#include "app/export_command.h"
#include "app/fit_command.h"
#include "app/improve_command.h"
#include "app/lay_command.h"
#include "app/open_command.h"
#include "app/output.h"
#include "app/pattern_command.h"
#include "app/payoff_command.h"
#include "app/picture_command.h"
#include "app/share_command.h"
#include "app/sheet_command.h"
#include "app/study_command.h"
#include "base/readable.h"

namespace laywright {
namespace {

// Help and version, or what is wrong with the command line; the exit code.
int conclude(CLI::App& program, const CLI::ParseError& stop) {
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

  int exit_code = exit_done;
  add_check_command(program, exit_code);
  add_lay_command(program, exit_code);
  add_picture_command(program, exit_code);
  add_share_command(program, exit_code);
  add_sheet_command(program, exit_code);
  add_export_command(program, exit_code);
  add_cause_command(program, exit_code);
  add_improve_command(program, exit_code);
  add_fit_command(program, exit_code);
  add_capacity_command(program, exit_code);
  add_pattern_command(program, exit_code);
  add_payoff_command(program, exit_code);
  add_study_command(program, exit_code);
  add_open_command(program, exit_code);
  if (argc < 2) return run_desktop({});
  program.require_subcommand(1);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& stop) {
    return conclude(program, stop);
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
