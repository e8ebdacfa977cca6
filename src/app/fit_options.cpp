#include "app/fit_options.h"

#include "advise/setting_text.h"

namespace laywright {
namespace {

// "traverse.left_stop=0.2mm"
Issues add_belief(const PlanDraft& draft, const std::string& text, FitSettings& settings) {
  const std::size_t sign = text.find('=');
  const std::string key = text.substr(0, sign);
  const Result<double> sigma = read_setting(draft, key, sign == std::string::npos ? "" : text.substr(sign + 1));
  if (!sigma.ok()) return sigma.issues();
  settings.beliefs.emplace_back(key, sigma.value());
  return {};
}

}  // namespace

Result<FitSettings> fit_settings(const PlanDraft& draft, const LaySettings& lay, int threads,
                                 const FitTuning& tuning) {
  FitSettings settings;
  settings.lay = lay;
  settings.threads = threads;
  if (Issues trouble = read_errors(draft, tuning.reading, settings.errors); !trouble.empty()) return trouble;
  for (const std::string& each : tuning.beliefs) {
    if (Issues trouble = add_belief(draft, each, settings); !trouble.empty()) return trouble;
  }
  return settings;
}

void add_fit_tuning(CommandLine command, FitTuning& tuning) {
  add_reading_options(command, tuning.reading);
  command
      .add_option("--belief", tuning.beliefs,
                  "How far a setting may be off, one sigma, like traverse.left_stop=0.2mm; 0: it is exact. May be "
                  "given several times")
      .type_name("KEY=SIGMA");
}

}  // namespace laywright
