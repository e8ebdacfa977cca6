#include "app/reading_options.h"

#include "advise/setting_text.h"
#include "app/number_option.h"

namespace laywright {
namespace {

Issues read_error(const PlanDraft& draft, const char* option, const std::string& text, double& error_mm) {
  if (text.empty()) return {};
  const Result<double> error = read_setting(draft, "fiber.diameter", text);
  if (!error.ok()) return {option_issue(option, text, error.issues().front().what)};
  error_mm = error.value();
  return {};
}

}  // namespace

void add_reading_options(CommandLine command, ReadingOptions& options) {
  command
      .add_option("--turns-error", options.turns_error_percent,
                  "One sigma of counted turns, in percent of the turns of a layer")
      .type_name("PERCENT")
      .check(number_between(1e-6, 100.0))
      .capture_default_str();
  command
      .add_option("--diameter-error", options.diameter_error,
                  "One sigma of diameters, like \"0.05 mm\"; a tenth of the fiber's diameter if not given")
      .type_name("LENGTH");
  command
      .add_option("--width-error", options.width_error,
                  "One sigma of a layer's width; a quarter of the fiber's diameter if not given")
      .type_name("LENGTH");
}

Issues read_errors(const PlanDraft& draft, const ReadingOptions& options, ReadingErrors& errors) {
  errors.turns_share = options.turns_error_percent / 100.0;
  Issues trouble = read_error(draft, "--diameter-error", options.diameter_error, errors.diameter_mm);
  return trouble.empty() ? read_error(draft, "--width-error", options.width_error, errors.width_mm) : trouble;
}

}  // namespace laywright
