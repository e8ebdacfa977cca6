#include "app/wind_options.h"
#include "app/number_option.h"

#include <cstdint>
#include <limits>

namespace laywright {
void add_wind_options(CommandLine command, LaySettings& settings, const char* group) {
  command.add_option("--seed", settings.seed, "Seed of all scatter; the same seed gives the same build")
      .type_name("N")
      .check(number_between(std::uint64_t{0}, std::numeric_limits<std::uint64_t>::max()))
      .capture_default_str()
      .group(group);
  command
      .add_option("--fidelity", settings.fidelity,
                  "Multiplies the stations per turn: 0.25 is a quick look, 2 a check (0.05 to 8)")
      .type_name("F")
      .check(number_between(0.05, 8.0))
      .capture_default_str()
      .group(group);
}

}  // namespace laywright
