#include "verdict/verdict.h"

#include <algorithm>

#include "verdict/first_setting.h"
#include "verdict/verdict_words.h"
#include "verdict/weigh.h"

namespace laywright {

WindVerdict verdict_of(const Plan& plan, const Build& build, const Measurements& measurements,
                       const TakeupRun* run) {
  WindVerdict verdict;
  verdict.checks = weigh(plan, build, measurements, run);
  const Product product = product_of(plan);
  verdict.long_wind = product != Product::crossed && measurements.layers.size() > certain_layers;
  const auto worst =
      std::max_element(verdict.checks.begin(), verdict.checks.end(),
                       [&](const Check& a, const Check& b) { return rank_of(a, product) < rank_of(b, product); });
  // The rim is always weighed.
  verdict.deciding = static_cast<std::size_t>(worst - verdict.checks.begin());
  verdict.grade = worst->grade;
  if (worst->grade == Grade::good) {
    verdict.reason = nearest_words(*worst);
    return verdict;
  }
  verdict.reason = sentence_of(*worst);
  verdict.first = first_setting(plan, build, measurements, verdict.checks, verdict.deciding);
  return verdict;
}

bool states_scatter(const PlanDraft& draft) { return draft.fiber.diameter_tolerance_mm > 0.0 || scatters(draft); }

}  // namespace laywright
