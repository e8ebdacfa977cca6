#include "report/improve_report.h"

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

std::string shown(const Plan& plan, const Knob& knob, double value) {
  if (knob.path == drift_path) return length_text(value);
  return shown_value(plan.draft(), knob.path, value);
}

// A line of the table: a name, then the plan and each proposal.
template <class Cell>
std::string line(const std::string& name, const std::vector<const Proposal*>& all, Cell cell) {
  std::string text = fmt::format("  {:<26}", name);
  for (const Proposal* each : all) text += fmt::format(" {:>12}", cell(*each));
  return text + '\n';
}

std::string heading(std::size_t count) {
  std::string text = fmt::format("  {:<26} {:>12}", "", "as it is");
  for (std::size_t i = 1; i <= count; ++i) text += fmt::format(" {:>12}", fmt::format("proposal {}", i));
  return text + '\n';
}

std::string settings_table(const Plan& plan, const Improvement& improvement,
                           const std::vector<const Proposal*>& all) {
  std::string text = "\nSettings\n" + heading(improvement.best.size());
  for (std::size_t i = 0; i < improvement.knobs.size(); ++i) {
    const Knob& knob = improvement.knobs[i];
    text += line(knob.words, all, [&](const Proposal& each) { return shown(plan, knob, each.values[i]); });
  }
  return text;
}

std::string places(const Proposal& each, FindingKind kind) { return figure(each.outcome.of(kind).places, 0); }

std::string figures_table(const std::vector<const Proposal*>& all) {
  using P = const Proposal&;
  std::string text = "\nAs it is set, the whole wind\n";
  text += line("pile-ups", all, [](P p) { return places(p, FindingKind::pile_up); });
  text += line("flange gaps", all, [](P p) { return places(p, FindingKind::flange_gap); });
  text += line("edge valleys", all, [](P p) { return places(p, FindingKind::edge_valley); });
  text += line("ride-ups", all, [](P p) { return places(p, FindingKind::ride_up); });
  text += line("dropped turns", all, [](P p) { return places(p, FindingKind::dropped_turn); });
  text += line("beside open gaps, m", all, [](P p) { return figure(p.outcome.gap_length_mm / 1e3, 1); });
  text += line("edge off the middle, mm", all, [](P p) { return figure(p.outcome.edge_deviation_mm, 3); });
  text += line("outer diameter, mm", all, [](P p) { return figure(p.outcome.outer_diameter.greatest_mm, 2); });
  text += line("rim clearance, mm", all, [](P p) { return figure(p.outcome.rim_clearance_mm, 2); });
  text += line("fill factor", all, [](P p) { return figure(p.outcome.fill_factor, 4); });
  text += line("layers", all, [](P p) { return figure(p.outcome.layers, 0); });
  text += "\nMean over the variants: other draws, each dial a step off, the fiber at its tolerance\n";
  text +=
      line("variants within limits", all, [](P p) { return fmt::format("{} of {}", p.keep_limits, p.variants); });
  text += line("beside open gaps, %", all, [](P p) { return figure(percent * p.mean.gap_share, 2); });
  text += line("edge off the middle, d", all, [](P p) { return figure(p.mean.edge_deviation_d, 2); });
  text += line("depth used, %", all, [](P p) { return figure(percent * p.mean.rim_use, 2); });
  return text;
}

Json proposal_json(const Plan& plan, const Improvement& improvement, const Proposal& proposal) {
  Json settings = Json::array();
  for (std::size_t i = 0; i < improvement.knobs.size(); ++i) {
    const Knob& knob = improvement.knobs[i];
    settings.push_back({{"key", knob.path}, {"value", shown(plan, knob, proposal.values[i])}});
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

std::string improve_text(const Plan& plan, const Improvement& improvement) {
  std::vector<const Proposal*> all{&improvement.plan};
  for (const Proposal& each : improvement.best) all.push_back(&each);
  std::string text = title_of(plan) + '\n' + wrapped(improvement.text, columns, 2);
  text += settings_table(plan, improvement, all) + figures_table(all);
  for (std::size_t i = 0; i < improvement.best.size(); ++i) {
    text += fmt::format("\nProposal {}\n", i + 1) + wrapped(improvement.best[i].text, columns, 2);
  }
  text += "\nTurned, within\n";
  for (const Knob& knob : improvement.knobs) {
    text += fmt::format("  {:<26} {} to {}, in steps of {}\n", knob.words, shown(plan, knob, knob.low),
                        shown(plan, knob, knob.high), shown(plan, knob, knob.step));
  }
  return text;
}

std::string improve_json(const Plan& plan, const Improvement& improvement) {
  Json best = Json::array(), ranges = Json::array();
  for (const Proposal& each : improvement.best) best.push_back(proposal_json(plan, improvement, each));
  for (const Knob& knob : improvement.knobs) {
    ranges.push_back({{"key", knob.path},
                      {"low", shown(plan, knob, knob.low)},
                      {"high", shown(plan, knob, knob.high)},
                      {"step", shown(plan, knob, knob.step)}});
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
