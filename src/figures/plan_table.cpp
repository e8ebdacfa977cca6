#include "figures/plan_table.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "figures/document_text.h"
#include "figures/figures.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

std::size_t widest(const std::vector<PlanRow>& rows, std::string PlanRow::*text) {
  std::size_t width = 0;
  for (const PlanRow& row : rows) width = std::max(width, character_count(visible(row.*text)));
  return width;
}

// fmt pads by characters, as far as it knows them.
std::string padded(const std::string& text, std::size_t width) {
  return fmt::format("{:<{}}", visible(text), width);
}

std::string figures_of(const std::optional<WoundFigures>& wound) {
  if (!wound) return fmt::format(" {:>11} {:>12} {:>14} {:>13}", "-", "-", "-", "-");
  return fmt::format(" {:>11} {:>12} {:>14} {:>13}", figure(wound->turns, 1), length_text(wound->length_mm),
                     figure(wound->outer_diameter_mm, 3) + " mm", figure(wound->rim_clearance_mm, 2) + " mm");
}

}  // namespace

PlanRow plan_row(const Plan& plan, const Build& build, const Measurements& measurements,
                 const WindVerdict& verdict) {
  return {plan.file(), name_of(verdict.grade), verdict.reason, verdict_line(verdict),
          WoundFigures{build.turns, build.length_mm, measurements.outer_diameter.greatest_mm,
                       measurements.rim_clearance_mm}};
}

std::string plan_table(const std::vector<PlanRow>& rows) {
  const bool any_laid =
      std::any_of(rows.begin(), rows.end(), [](const PlanRow& row) { return row.wound.has_value(); });
  const std::size_t files = std::max<std::size_t>(widest(rows, &PlanRow::file), 4);
  const std::size_t verdicts = std::max<std::size_t>(widest(rows, &PlanRow::verdict), 7);
  std::string text = fmt::format("  {:<{}}  {:<{}}", "plan", files, "verdict", verdicts);
  if (any_laid)
    text += fmt::format(" {:>11} {:>12} {:>14} {:>13}", "turns", "length", "outer diameter", "rim clearance");
  text.erase(text.find_last_not_of(' ') + 1);
  text += '\n';
  for (const PlanRow& row : rows) {
    std::string line = fmt::format("  {}  {}", padded(row.file, files), padded(row.verdict, verdicts));
    if (any_laid) line += figures_of(row.wound);
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + '\n';
    const std::string& below = row.line.empty() ? row.reason : row.line;
    if (!below.empty()) text += paragraph(visible(below), 6);
  }
  return text;
}

std::string plans_json(const std::vector<PlanRow>& rows, std::vector<nlohmann::ordered_json> documents) {
  Json plans = Json::array();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    plans.push_back({{"file", rows[i].file},
                     {"verdict", rows[i].verdict},
                     {"reason", rows[i].reason},
                     {"build", std::move(documents[i])}});
  }
  return document_text({{"format", "lay-builds 1"}, {"plans", std::move(plans)}});
}

}  // namespace laywright
