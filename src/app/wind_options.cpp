#include "app/wind_options.h"

#include <string>

namespace laywright {
namespace {

// A negative seed would be read as a huge one.
std::string refuse_sign(const std::string& seed) {
  return seed.starts_with('-') ? "a seed is a whole number, 0 or more" : "";
}

}  // namespace

void add_wind_options(CLI::App& command, LaySettings& settings, const char* group) {
  command.add_option("--seed", settings.seed, "Seed of all scatter; the same seed gives the same build")
      ->type_name("N")
      ->check(CLI::Validator(refuse_sign, ""))
      ->capture_default_str()
      ->group(group);
  command
      .add_option("--fidelity", settings.fidelity,
                  "Multiplies the stations per turn: 0.25 is a quick look, 2 a check (0.05 to 8)")
      ->type_name("F")
      ->check(CLI::Range(0.05, 8.0).description(""))
      ->capture_default_str()
      ->group(group);
}

}  // namespace laywright
