#include "app/advice_options.h"

#include <fmt/format.h>

#include "app/command_outcome.h"
#include "app/number_option.h"
#include "app/wind_options.h"

namespace laywright {

void add_threads_option(CommandLine command, int& threads) {
  command.add_option("--threads", threads, "How many builds are laid at once; the result is the same for any")
      .type_name("N")
      .check(number_between(1, 1024))
      .capture_default_str();
}

void add_advice_options(CommandLine command, AdviceOptions& options, const char* format) {
  command.add_option("PLAN", options.plan, "The lay plan, *.lay.toml").type_name("").required();
  command.add_flag("--json", options.json,
                   fmt::format("Print one JSON document (format \"{}\") instead of text", format));
  add_wind_options(command, options.lay);
  add_threads_option(command, options.threads);
}

int conclude(const Issues& issues, bool stopped) {
  return conclude(CommandOutcome{stopped ? exit_stopped : exit_unsound, stopped ? Issues{} : issues, {}});
}

}  // namespace laywright
