#include "advise/fit_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "advise/dial.h"

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
  const auto shown = [&](double value) { return shown_value(plan.draft(), each.unknown.path, value); };
  return fmt::format("the {} was {} ({} to {}) instead of {}", each.unknown.words, shown(each.value),
                     shown(each.low), shown(each.high), shown(each.unknown.believed));
}

}  // namespace

std::string conclusion_of(const Plan& plan, const Fit& fit) {
  constexpr double too_much = 2.0;
  std::vector<std::string> differences;
  for (const Fitted& each : fit.fitted) {
    if (differs(each)) differences.push_back(difference(plan, each));
  }
  std::string text = differences.empty()
                         ? std::string("The readings agree with the plan: no setting differs from it beyond chance.")
                         : fmt::format("Most likely {}.", listed(differences));
  for (const std::vector<std::string>& group : fit.not_told_apart) {
    text +=
        group.size() == 1
            ? fmt::format(" The readings say nothing of the {}; what is shown is what was believed.", group.front())
            : fmt::format(
                  " The readings cannot tell the {} apart: what one of them is off, another could be "
                  "instead.",
                  listed(group));
  }
  if (fit.misfit > too_much) {
    text += fmt::format(
        " The model misses the readings by {:.1f} times what they should scatter: something else "
        "differs, or the readings are less exact than given.",
        fit.misfit);
  }
  return text;
}

}  // namespace laywright
