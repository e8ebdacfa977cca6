#include "advise/improve_words.h"

#include <cmath>

#include <fmt/format.h>

#include "advise/cause_words.h"
#include "measure/phrases.h"

namespace laywright {
namespace {

constexpr double percent = 100.0;
constexpr double mm_per_m = 1000.0;

// A figure that changes by more than `notable`, into the gains or the costs.
void tell(double before, double after, double notable, bool less_is_better, const std::string& words,
          std::vector<std::string>& gains, std::vector<std::string>& costs) {
  if (std::abs(after - before) < notable) return;
  ((after < before) == less_is_better ? gains : costs).push_back(words);
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    text += fmt::format("{}{}", i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ", parts[i]);
  }
  return text;
}

std::string from_to(const char* what, const std::string& before, const std::string& after) {
  return fmt::format("{} {} instead of {}", what, after, before);
}

}  // namespace

std::string words_of(const Plan& plan, const Improvement& improvement, const Proposal& proposal) {
  const Outcome &a = improvement.plan.outcome, &b = proposal.outcome;
  const double d = plan.fiber().diameter_mm;
  std::vector<std::string> gains, costs;
  for (const FindingKind kind : {FindingKind::pile_up, FindingKind::flange_gap, FindingKind::edge_valley,
                                 FindingKind::ride_up, FindingKind::dropped_turn}) {
    const int before = a.of(kind).places, after = b.of(kind).places;
    tell(before, after, 1.0, true, fmt::format("{} instead of {}", counted(kind, after), count_of(before)), gains,
         costs);
  }
  const auto metres = [](double mm) { return fmt::format("{:.1f} m", mm / mm_per_m); };
  tell(a.gap_length_mm, b.gap_length_mm, 0.001 * a.length_mm, true,
       from_to("fiber beside open gaps", metres(a.gap_length_mm), metres(b.gap_length_mm)), gains, costs);
  tell(a.edge_deviation_mm, b.edge_deviation_mm, 0.1 * d, true,
       from_to("edges off the middle by", in_mm(a.edge_deviation_mm), in_mm(b.edge_deviation_mm)), gains, costs);
  const auto share = [](double value) { return fmt::format("{:.1f} %", percent * value); };
  tell(a.rim_use, b.rim_use, 0.005, true, from_to("depth used", share(a.rim_use), share(b.rim_use)), gains, costs);
  tell(a.fill_factor, b.fill_factor, 0.005, false,
       from_to("fill", fmt::format("{:.3f}", a.fill_factor), fmt::format("{:.3f}", b.fill_factor)), gains, costs);
  if (a.layers != b.layers) {
    costs.push_back(fmt::format("{} layers instead of {}, so as many reversals", b.layers, a.layers));
  }
  const bool steps = proposal.draft.wind.steps.size() > plan.wind().steps.size();
  if (steps) {
    costs.push_back(
        fmt::format("{} steps of the stops to be set during the wind", proposal.draft.wind.steps.size()));
  }
  std::string text = gains.empty() ? "Gains nothing notable" : "Gains: " + joined(gains);
  text += costs.empty() ? ". Costs nothing notable." : ". Costs: " + joined(costs) + ".";
  return text + fmt::format(" {} of {} variants keep the limits.", proposal.keep_limits, proposal.variants);
}

std::string conclusion_of(const Plan& plan, const Improvement& improvement) {
  const Merit& now = improvement.plan.mean;
  const std::string tried = fmt::format("{} builds were laid", improvement.trials);
  if (improvement.best.empty()) {
    return fmt::format("Nothing better was found within the ranges: {}. The plan {} its limits.", tried,
                       now.keeps_limits() ? "keeps" : "does not keep");
  }
  const Proposal& best = improvement.best.front();
  std::string text;
  if (best.outcome.of(FindingKind::pile_up).places == 0 && best.outcome.of(FindingKind::flange_gap).places == 0) {
    text = fmt::format("There are settings without pile-ups over {:.3g} d and without flange gaps over {:.3g} d.",
                       plan.limits().pile_up_d, plan.limits().gap_d);
  } else {
    text = "No settings within the ranges keep all limits; these come nearest.";
  }
  if (best.keep_limits < best.variants) {
    text += fmt::format(
        " They are not safe: with other draws, or a dial one step off, {} of {} variants do not keep "
        "the limits.",
        best.variants - best.keep_limits, best.variants);
  }
  return text + fmt::format(" {}.", tried);
}

}  // namespace laywright
