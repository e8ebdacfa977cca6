#include "app/open_command.h"

#include <memory>
#include <string>
#include <utility>

#include "app/desktop.h"
#include "app/number_option.h"
#include "app/written_files.h"

namespace laywright {

void add_open_command(CommandLine program, std::shared_ptr<const Catalogues> entries, int& exit_code) {
  const CommandLine command = program.add_command("open", "Open the window, on plans");
  const auto options = std::make_shared<DesktopOptions>();
  options->entries = std::move(entries);
  const CommandOption plans =
      command
          .add_option("PLAN", options->plans,
                      "Lay plans, *.lay.toml, an order over spools, *.order.toml, or a lesson; without any the last "
                      "that was open")
          .type_name("");
  const CommandOption state =
      command
          .add_option("--state", options->state_file,
                      "Writes what the window shows into this file as JSON, whenever it changes")
          .type_name("FILE.json")
          .group("Testing");
  command.add_option("--size", options->size, "Of the window's inside, px")
      .type_name("WxH")
      .check(size_between(64, 16'384))
      .group("Testing");
  guard_inputs(command, {plans}, {{state, {".json"}}});
  command.footer(
      "Needs a display and OpenGL 3.3. Without them, `laywright picture` draws into a file.\n\n"
      "Examples:\n"
      "  laywright open samples/even.lay.toml\n"
      "  laywright open samples/even.lay.toml samples/long-dwell.lay.toml\n"
      "  laywright open");
  command.callback([options, &exit_code] { exit_code = run_desktop(*options); });
}

}  // namespace laywright
