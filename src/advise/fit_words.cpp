#include "advise/fit_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "advise/movable_setting.h"
#include "base/quantity_text.h"

namespace laywright {
namespace {

bool differs(const Fitted& each) { return each.unknown.believed < each.low || each.unknown.believed > each.high; }

std::string listed(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    text += fmt::format("{}{}", i == 0 ? "" : i + 1 == words.size() ? " and " : ", ", words[i]);
  }
  return text;
}

std::string difference(const Plan& plan, const Fitted& each) {
  const auto told = [&](double value) { return told_value(plan, each, value); };
  return fmt::format("the {} was {} ({} to {}) instead of {}", each.unknown.words, told(each.value), told(each.low),
                     told(each.high), shown_value(plan.draft(), each.unknown.path, each.unknown.believed));
}

// What the readings leave open, each group once.
std::string left_open(const Fit& fit) {
  std::vector<std::string> alone, together;
  for (const std::vector<std::string>& group : fit.not_told_apart) {
    if (group.size() == 1) alone.push_back("the " + group.front());
    if (group.size() > 1) together.push_back("the " + listed(group));
  }
  std::string text;
  if (!alone.empty())
    text += fmt::format(" The readings say nothing of {}; what is shown is what was believed.", listed(alone));
  if (!together.empty()) {
    std::string all;
    for (const std::string& each : together) all += (all.empty() ? "" : "; nor ") + each;
    text += fmt::format(" {} cannot tell apart {}: if one of them is not as shown, another may be off instead.",
                        alone.empty() ? "The readings" : "They", all);
  }
  return text;
}

}  // namespace

std::string told_value(const Plan& plan, const Fitted& fitted, double value) {
  const double step = step_told(fitted);
  return shown_value(plan.draft(), fitted.unknown.path, std::round(value / step) * step);
}

std::string differences_words(const Plan& plan, const Fit& fit) {
  std::vector<std::string> differences;
  for (const Fitted& each : fit.fitted) {
    if (differs(each)) differences.push_back(difference(plan, each));
  }
  return listed(differences);
}

std::string conclusion_of(const Plan& plan, const Fit& fit) {
  constexpr double too_much = 2.0;
  const std::string differences = differences_words(plan, fit);
  std::string text = differences.empty()
                         ? std::string("The readings agree with the plan: no setting differs from it beyond chance.")
                         : fmt::format("Most likely {}.", differences);
  text += left_open(fit);
  if (fit.misfit > too_much) {
    text += fmt::format(
        " The model misses the readings by {} times what they should scatter: something else "
        "differs, or the readings are less exact than given.",
        figure(fit.misfit, 1));
  }
  return text;
}

}  // namespace laywright
