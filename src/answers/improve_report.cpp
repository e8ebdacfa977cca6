#include "answers/improve_report.h"

#include <utility>
#include <vector>

#include <fmt/format.h>

#include "advise/improve_words.h"
#include "answers/outcome_json.h"
#include "figures/figures.h"
#include "plan/plan_values.h"
#include "verdict/verdict_words.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

template <class Cell>
ProposalRow row(std::string name, const std::vector<const Proposal*>& all, Cell cell) {
  ProposalRow made{std::move(name), {}};
  for (const Proposal* each : all) made.cells.push_back(cell(*each));
  return made;
}

std::string heading(std::size_t count) {
  std::string text = fmt::format("  {:<26} {:>12}", "", "as it is");
  for (std::size_t i = 1; i <= count; ++i) text += fmt::format(" {:>12}", fmt::format("proposal {}", i));
  return text + '\n';
}

ProposalTable settings_table(const Plan& plan, const Improvement& improvement,
                             const std::vector<const Proposal*>& all) {
  ProposalTable table{"Settings", {}};
  for (std::size_t i = 0; i < improvement.searchables.size(); ++i) {
    const SearchableSetting& searchable = improvement.searchables[i];
    table.rows.push_back(row(searchable.words, all, [&](const Proposal& each) {
      return searchable_text(plan, searchable, each.values[i]);
    }));
  }
  return table;
}

// A check of the plan's verdict, as it stands in another; "-" where that does not weigh it.
std::string cell_of(const WindVerdict& verdict, const Check& check) {
  for (const Check& each : verdict.checks) {
    if (each.what == check.what && each.side == check.side) return value_text(each);
  }
  return "-";
}

// What the machine bears stands apart: only where it is not good in one of them.
ProposalTable figures_table(const std::vector<const Proposal*>& all) {
  using P = const Proposal&;
  ProposalTable table{"As it is set, the whole wind", {}};
  table.rows.push_back(row("verdict", all, [](P p) { return std::string(name_of(p.verdict.grade)); }));
  for (const Check& check : all.front()->verdict.checks) {
    if (!depends_on_lay(check.what) && check.grade == Grade::good) continue;
    table.rows.push_back(row(name_of(check), all, [&](P p) { return cell_of(p.verdict, check); }));
  }
  table.rows.push_back(
      row("outer diameter", all, [](P p) { return figure(p.outcome.outer_diameter.greatest_mm, 2) + " mm"; }));
  return table;
}

ProposalTable variants_table(const std::vector<const Proposal*>& all) {
  using P = const Proposal&;
  const auto steps_text = [](P p) {
    const int steps = p.variants - p.draws;
    return steps > 0 ? fmt::format("{} of {}", p.good_variants - p.good_draws, steps) : std::string("-");
  };
  ProposalTable table{"How sure that is: other draws, and each setting a step off",
                      {row("good draws", all, [](P p) { return fmt::format("{} of {}", p.good_draws, p.draws); }),
                       row("good with a step off", all, steps_text), row("of all, not to be wound", all, [](P p) {
                         return fmt::format("{} of {}", p.bad_variants, p.variants);
                       })}};
  return table;
}

std::string text_of(const ProposalTable& table, const std::string& head) {
  std::string text = fmt::format("\n{}\n{}", table.title, head);
  for (const ProposalRow& each : table.rows) {
    text += fmt::format("  {:<26}", each.name);
    for (const std::string& cell : each.cells) text += fmt::format(" {:>12}", cell);
    text += '\n';
  }
  return text;
}

Json proposal_json(const Plan& plan, const Improvement& improvement, const Proposal& proposal) {
  Json settings = Json::array();
  for (std::size_t i = 0; i < improvement.searchables.size(); ++i) {
    const SearchableSetting& searchable = improvement.searchables[i];
    settings.push_back({{"key", searchable.path}, {"value", searchable_text(plan, searchable, proposal.values[i])}});
  }
  return {{"set", std::move(settings)},
          {"outcome", outcome_json(proposal.outcome)},
          {"grade", name_of(proposal.verdict.grade)},
          {"reason", proposal.verdict.reason},
          {"draws", proposal.draws},
          {"good_draws", proposal.good_draws},
          {"variants", proposal.variants},
          {"good_variants", proposal.good_variants},
          {"bad_variants", proposal.bad_variants},
          {"text", proposal.text}};
}

}  // namespace

std::vector<ProposalTable> proposal_tables(const Plan& plan, const Improvement& improvement) {
  std::vector<const Proposal*> all{&improvement.plan};
  for (const Proposal& each : improvement.best) all.push_back(&each);
  return {settings_table(plan, improvement, all), figures_table(all), variants_table(all)};
}

std::string improve_text(const Plan& plan, const Improvement& improvement) {
  std::string text = title_of(plan) + '\n' + paragraph(improvement.text, 2);
  std::string head = heading(improvement.best.size());  // over the settings alone
  for (const ProposalTable& table : proposal_tables(plan, improvement)) {
    text += text_of(table, head);
    head.clear();
  }
  for (std::size_t i = 0; i < improvement.best.size(); ++i) {
    text += fmt::format("\nProposal {}\n", i + 1) + paragraph(improvement.best[i].text, 2);
  }
  if (improvement.leave_it) return text;
  text += "\nTurned, within\n";
  for (const SearchableSetting& searchable : improvement.searchables) {
    text += fmt::format(
        "  {:<26} {} {} {}", searchable.words, searchable_text(plan, searchable, searchable.nearest(searchable.low)),
        searchable.is_switch ? "or" : "to", searchable_text(plan, searchable, searchable.nearest(searchable.high)));
    if (!searchable.is_switch)
      text += fmt::format(", in steps of {}", searchable_text(plan, searchable, searchable.step));
    text += '\n';
  }
  return text;
}

std::string improve_json(const Plan& plan, const Improvement& improvement) {
  Json best = Json::array(), ranges = Json::array();
  for (const Proposal& each : improvement.best) best.push_back(proposal_json(plan, improvement, each));
  for (const SearchableSetting& searchable : improvement.searchables) {
    ranges.push_back(
        {{"key", searchable.path},
         {"low", searchable_text(plan, searchable, searchable.nearest(searchable.low))},
         {"high", searchable_text(plan, searchable, searchable.nearest(searchable.high))},
         {"step", searchable.is_switch ? Json(nullptr) : Json(searchable_text(plan, searchable, searchable.step))}});
  }
  return document_text({{"format", "lay-improve 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"text", improvement.text},
                        {"leave_it", improvement.best.empty()},
                        {"as_it_is", proposal_json(plan, improvement, improvement.plan)},
                        {"proposals", std::move(best)},
                        {"ranges", std::move(ranges)},
                        {"trials", improvement.trials}});
}

}  // namespace laywright
