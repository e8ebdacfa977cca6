#include "report/improve_report.h"

#include <utility>
#include <vector>

#include <fmt/format.h>

#include "advise/dial.h"
#include "plan/plan_values.h"
#include "report/figures.h"
#include "report/outcome_json.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t columns = 96;
constexpr double percent = 100.0;

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
  for (std::size_t i = 0; i < improvement.knobs.size(); ++i) {
    const Knob& knob = improvement.knobs[i];
    table.rows.push_back(
        row(knob.words, all, [&](const Proposal& each) { return knob_text(plan, knob, each.values[i]); }));
  }
  return table;
}

std::string places(const Proposal& each, FindingKind kind) { return figure(each.outcome.of(kind).places, 0); }

ProposalTable figures_table(const std::vector<const Proposal*>& all) {
  using P = const Proposal&;
  return {"As it is set, the whole wind",
          {row("pile-ups", all, [](P p) { return places(p, FindingKind::pile_up); }),
           row("flange gaps", all, [](P p) { return places(p, FindingKind::flange_gap); }),
           row("edge valleys", all, [](P p) { return places(p, FindingKind::edge_valley); }),
           row("ride-ups", all, [](P p) { return places(p, FindingKind::ride_up); }),
           row("dropped turns", all, [](P p) { return places(p, FindingKind::dropped_turn); }),
           row("beside open gaps, m", all, [](P p) { return figure(p.outcome.gap_length_mm / 1e3, 1); }),
           row("edge off the middle, mm", all, [](P p) { return figure(p.outcome.edge_deviation_mm, 3); }),
           row("outer diameter, mm", all, [](P p) { return figure(p.outcome.outer_diameter.greatest_mm, 2); }),
           row("rim clearance, mm", all, [](P p) { return figure(p.outcome.rim_clearance_mm, 2); }),
           row("fill factor", all, [](P p) { return figure(p.outcome.fill_factor, 4); }),
           row("layers", all, [](P p) { return figure(p.outcome.layers, 0); })}};
}

ProposalTable means_table(const std::vector<const Proposal*>& all) {
  using P = const Proposal&;
  return {
      "Mean over the variants: other draws, each dial a step off, the fiber at its tolerance",
      {row("variants within limits", all, [](P p) { return fmt::format("{} of {}", p.keep_limits, p.variants); }),
       row("beside open gaps, %", all, [](P p) { return figure(percent * p.mean.gap_share, 2); }),
       row("edge off the middle, d", all, [](P p) { return figure(p.mean.edge_deviation_d, 2); }),
       row("depth used, %", all, [](P p) { return figure(percent * p.mean.rim_use, 2); })}};
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
  for (std::size_t i = 0; i < improvement.knobs.size(); ++i) {
    const Knob& knob = improvement.knobs[i];
    settings.push_back({{"key", knob.path}, {"value", knob_text(plan, knob, proposal.values[i])}});
  }
  return {{"set", std::move(settings)},
          {"outcome", outcome_json(proposal.outcome)},
          {"mean",
           {{"beyond_limits_d", proposal.mean.beyond_limits_d},
            {"gap_share", proposal.mean.gap_share},
            {"edge_deviation_d", proposal.mean.edge_deviation_d},
            {"rim_use", proposal.mean.rim_use}}},
          {"variants", proposal.variants},
          {"variants_within_limits", proposal.keep_limits},
          {"text", proposal.text}};
}

}  // namespace

std::string knob_text(const Plan& plan, const Knob& knob, double value) {
  if (knob.path == drift_path) return length_text(value);
  return shown_value(plan.draft(), knob.path, value);
}

std::vector<ProposalTable> proposal_tables(const Plan& plan, const Improvement& improvement) {
  std::vector<const Proposal*> all{&improvement.plan};
  for (const Proposal& each : improvement.best) all.push_back(&each);
  return {settings_table(plan, improvement, all), figures_table(all), means_table(all)};
}

std::string improve_text(const Plan& plan, const Improvement& improvement) {
  std::string text = title_of(plan) + '\n' + wrapped(improvement.text, columns, 2);
  std::string head = heading(improvement.best.size());  // over the settings alone
  for (const ProposalTable& table : proposal_tables(plan, improvement)) {
    text += text_of(table, head);
    head.clear();
  }
  for (std::size_t i = 0; i < improvement.best.size(); ++i) {
    text += fmt::format("\nProposal {}\n", i + 1) + wrapped(improvement.best[i].text, columns, 2);
  }
  text += "\nTurned, within\n";
  for (const Knob& knob : improvement.knobs) {
    text += fmt::format("  {:<26} {} to {}, in steps of {}\n", knob.words, knob_text(plan, knob, knob.low),
                        knob_text(plan, knob, knob.high), knob_text(plan, knob, knob.step));
  }
  return text;
}

std::string improve_json(const Plan& plan, const Improvement& improvement) {
  Json best = Json::array(), ranges = Json::array();
  for (const Proposal& each : improvement.best) best.push_back(proposal_json(plan, improvement, each));
  for (const Knob& knob : improvement.knobs) {
    ranges.push_back({{"key", knob.path},
                      {"low", knob_text(plan, knob, knob.low)},
                      {"high", knob_text(plan, knob, knob.high)},
                      {"step", knob_text(plan, knob, knob.step)}});
  }
  return document_text({{"format", "lay-improve 1"},
                        {"plan", {{"title", plan.title()}, {"file", plan.file()}}},
                        {"text", improvement.text},
                        {"as_it_is", proposal_json(plan, improvement, improvement.plan)},
                        {"proposals", std::move(best)},
                        {"ranges", std::move(ranges)},
                        {"trials", improvement.trials}});
}

}  // namespace laywright
