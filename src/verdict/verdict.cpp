#include "verdict/verdict.h"

#include <algorithm>
#include <tuple>

#include "measure/acceptance.h"
#include "verdict/first_setting.h"
#include "verdict/verdict_words.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

// The greater decides.
auto rank_of(const Check& check, bool crossed) {
  const bool leads = crossed && check.what == Weighed::ribbon;
  const bool good = check.grade == Grade::good;
  return std::tuple(check.grade, !good && is_firm(check.what), !good && leads, strain_of(check) / good_up_to(check));
}

}  // namespace

WindVerdict verdict_of(const Plan& plan, const Build& build, const Measurements& measurements,
                       const TakeupRun* run) {
  WindVerdict verdict;
  verdict.checks = weigh(plan, build, measurements, run);
  const bool crossed = product_of(plan) == Product::crossed;
  const auto worst =
      std::max_element(verdict.checks.begin(), verdict.checks.end(),
                       [&](const Check& a, const Check& b) { return rank_of(a, crossed) < rank_of(b, crossed); });
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

}  // namespace laywright
