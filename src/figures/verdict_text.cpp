#include "figures/verdict_text.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "figures/figures.h"
#include "measure/severity.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

std::string draws_table(const WindVerdict& verdict) {
  constexpr std::size_t most_lines = 12;
  std::string text;
  if (verdict.draws.empty()) return text;
  text += fmt::format("  {:<12} {:>14}   {:<12} {}\n", "seed", "fiber, mm", "verdict", "what decides");
  for (std::size_t i = 0; i < std::min(most_lines, verdict.draws.size()); ++i) {
    const DrawSeen& draw = verdict.draws[i];
    text += fmt::format("  {:<12} {:>14}   {:<12} {}\n", draw.seed, setting(draw.fiber_diameter_mm),
                        name_of(draw.grade), draw.decides);
  }
  if (verdict.draws.size() > most_lines) text += fmt::format("  ... {} more\n", verdict.draws.size() - most_lines);
  return text;
}

}  // namespace

std::string checks_table(const Plan& plan, const Build& build, const WindVerdict& verdict) {
  std::string text = fmt::format("Weighed as {}\n  {:<24} {:>14} {:>22} {:>16}\n", weighed_as(plan), "", "figure",
                                 "limit", "margin");
  for (const Check& check : verdict.checks) {
    text += fmt::format("  {:<24} {:>14} {:>22} {:>16}  {}\n", name_of(check), value_text(check), limit_text(check),
                        margin_text(check), name_of(check.grade));
  }
  text += paragraph(draw_words(build, verdict), 2);
  if (verdict.draws.empty() && states_scatter(plan.draft())) {
    text += paragraph(
        fmt::format("The plan states tolerances or scatter, and this verdict knows one draw alone: without "
                    "--draws 1 it is the worst of {}.",
                    usual_draws),
        2);
  }
  return text + draws_table(verdict);
}

std::string small_findings_words(const std::vector<Finding>& findings) {
  struct Sum {
    int findings = 0, places = 0;
  };
  std::array<Sum, static_cast<std::size_t>(FindingKind::rim_overrun) + 1> sums{};
  for (const Finding& finding : findings) {
    if (!is_small(finding)) continue;
    Sum& sum = sums[static_cast<std::size_t>(finding.kind)];
    ++sum.findings;
    sum.places += finding.occurrences;
  }
  std::string words;
  for (std::size_t kind = 0; kind < sums.size(); ++kind) {
    if (sums[kind].findings == 0) continue;
    const auto name = static_cast<FindingKind>(kind);
    const int places = is_edge(name) ? sums[kind].findings : sums[kind].places;
    words += fmt::format("{}{} in {}", words.empty() ? "" : ", ", words_for(name), counted(places, "place"));
  }
  return words;
}

}  // namespace laywright
