#include "figures/dial_words.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "figures/figures.h"
#include "plan/dialling.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

// Of what was asked, and of what a dial gives: nobody measures that finer.
constexpr std::size_t asked_digits = 6, laid_digits = 5;

std::string value_words(const PlanDraft& draft, const std::string& path, double value, std::size_t digits) {
  const FieldInfo& field = *field_at(draft, path);
  if (field.kind != FieldKind::quantity) return counted(setting(value), "turn");
  const auto origin = draft.origins.find(path);
  return format_quantity(
      value, *unit_written(field, origin == draft.origins.end() ? std::string() : origin->second.written), digits);
}

std::string setting_words(const PlanDraft& draft, const DialledSetting& each) {
  const auto place = std::find_if(dial_places().begin(), dial_places().end(),
                                  [&](const DialPlace& known) { return known.name == each.dial; });
  const std::string words(place->words);
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    if (each.path.rfind(step_path(i) + ".", 0) == 0)
      return fmt::format("{} from layer {}", words, draft.wind.steps[i].from_layer);
  }
  return words;
}

DialWords words_of(const Plan& plan, const DialledSetting& each) {
  DialWords words{setting_words(plan.draft(), each), visible(reading_words(each)),
                  value_words(plan.draft(), each.path, each.laid, each.moved() ? laid_digits : asked_digits), ""};
  if (const std::string asked = value_words(plan.draft(), each.path, each.asked, asked_digits); asked != words.laid)
    words.asked = asked;
  return words;
}

}  // namespace

std::vector<DialWords> dial_words(const Plan& plan) {
  std::vector<DialWords> all;
  for (const DialledSetting& each : plan.dialled()) all.push_back(words_of(plan, each));
  return all;
}

std::optional<DialWords> dial_words_at(const Plan& plan, std::string_view path) {
  const DialledSetting* found = dialled_at(plan, path);
  return found == nullptr ? std::nullopt : std::optional(words_of(plan, *found));
}

std::optional<DialWords> dial_words_in_layer(const Plan& plan, std::string_view key, int layer) {
  std::optional<DialWords> words = dial_words_at(plan, fmt::format("traverse.{}", key));
  for (std::size_t i = 0; i < plan.wind().steps.size() && plan.wind().steps[i].from_layer <= layer; ++i) {
    if (std::optional<DialWords> changed = dial_words_at(plan, fmt::format("{}.{}", step_path(i), key)))
      words = std::move(changed);
  }
  return words;
}

std::string meaning(const DialWords& words) {
  return fmt::format("= {}{}", words.laid, words.asked.empty() ? "" : ", asked " + words.asked);
}

std::string counter_shows(double reading, const std::string& unit) {
  constexpr int most_decimals = 3;
  int decimals = 0;
  for (double shown = reading; decimals < most_decimals && std::abs(shown - std::round(shown)) > 1e-6; shown *= 10.0)
    ++decimals;
  return fmt::format("{} {}", figure(reading, decimals), visible(unit));
}

std::string dial_table(const Plan& plan) {
  const std::vector<DialWords> all = dial_words(plan);
  std::size_t setting = 0, reading = 0;
  for (const DialWords& each : all) {
    setting = std::max(setting, character_count(each.setting));
    reading = std::max(reading, character_count(each.reading));
  }
  std::string text;
  for (const DialWords& each : all) {
    text += fmt::format("  {:<{}}  {:<{}}  {}\n", each.setting, std::max<std::size_t>(15, setting) - 1, each.reading,
                        reading, meaning(each));
  }
  return text;
}

}  // namespace laywright
