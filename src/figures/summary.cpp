#include "figures/summary.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "base/units.h"
#include "figures/dial_words.h"
#include "figures/figures.h"
#include "figures/machine_text.h"
#include "figures/payoff_report.h"
#include "figures/rolling_words.h"
#include "figures/shape_words.h"
#include "figures/verdict_text.h"
#include "figures/wind_rows.h"
#include "measure/severity.h"
#include "plan/fields.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

// Words that may be too many for a line go on below themselves.
std::string words_row(const char* label, const std::string& words) {
  std::string lines = paragraph(words, labelled(label, "").size() - 1);
  return lines.replace(0, labelled(label, "").size() - 1, labelled(label, ""), 0, labelled(label, "").size() - 1);
}

std::string order_words(const PlanOrder& order) {
  std::string words;
  for (const OrderField& field : order_fields()) {
    if (const std::string& text = order.*field.text; !text.empty())
      words += fmt::format("{}{} {}", words.empty() ? "" : ", ", field.key, visible(text));
  }
  return words;
}

std::string spool_line(const Spool& spool) {
  std::string text = fmt::format("barrel {} mm, flange {} mm, inside width {} mm", setting(spool.barrel_diameter_mm),
                                 setting(spool.flange_diameter_mm), setting(spool.inside_width_mm));
  if (spool.flange_taper_rad != 0.0) {
    text += fmt::format(", flange taper {} deg", setting(spool.flange_taper_rad * deg_per_rad));
  }
  return text;
}

std::string fiber_line(const Fiber& fiber) {
  const std::string friction = std::isinf(fiber.friction) ? "held (never slips)" : setting(fiber.friction);
  const std::string varies = fiber.diameter_scatter_mm > 0.0 ? fmt::format(" (it varies by {} um, one sigma)",
                                                                           setting(1e3 * fiber.diameter_scatter_mm))
                                                             : "";
  return fmt::format("diameter {} mm{}, friction {}", setting(fiber.diameter_mm), varies, friction);
}

std::string reversal_words(const Reversal& reversal) {
  switch (reversal.kind) {
    case ReversalKind::instant: return "instant reversal";
    case ReversalKind::dwell:
      return fmt::format("dwell of {} at the stops", counted(setting(reversal.turns), "turn"));
    case ReversalKind::ramp: return "reversal ramp of " + counted(setting(reversal.turns), "turn");
  }
  return "";
}

std::string traverse_lines(const Plan& plan) {
  const Traverse& traverse = plan.traverse();
  std::string text = labelled("traverse", fmt::format("pitch {} mm ({} d), {}, {}", setting(traverse.pitch_mm),
                                                      figure(traverse.pitch_mm / plan.fiber().diameter_mm, 2),
                                                      traverse.motion == Motion::stepped ? "stepped" : "continuous",
                                                      reversal_words(traverse.reversal)));
  text +=
      labelled("guide", fmt::format("stops {} mm left and {} mm right of the flange faces inward, free length {} mm",
                                    setting(traverse.left_stop_mm), setting(traverse.right_stop_mm),
                                    setting(traverse.free_length_mm)));
  if (!plan.wind().steps.empty()) {
    text += labelled("wind steps", fmt::format("{}, the first from layer {}", plan.wind().steps.size(),
                                               plan.wind().steps.front().from_layer));
  }
  return text;
}

std::string stopped_words(StopReason reason) {
  switch (reason) {
    case StopReason::length: return "the plan's length was reached";
    case StopReason::turns: return "the plan's turns were reached";
    case StopReason::diameter: return "the plan's diameter was reached";
    case StopReason::rim: return "STOPPED EARLY: the next fiber would have left the flange rim";
  }
  return "";
}

std::string totals_lines(const Plan& plan, const Build& build, const Measurements& m) {
  std::string text = "Build\n";
  text += labelled("turns", fmt::format("{} in {}", figure(build.turns, 1), counted(m.layers.size(), "layer")));
  text += labelled("fiber", length_text(build.length_mm) +
                                (m.fiber_mass_kg ? fmt::format(", {} kg", short_figure(*m.fiber_mass_kg, 3)) : ""));
  text += labelled("outer diameter", outer_diameter_words(m.outer_diameter));
  if (m.unfinished_layer) {
    text += labelled("unfinished", unfinished_words(*m.unfinished_layer));
    text += labelled("with it", with_it_words(*m.unfinished_layer));
  }
  text += labelled("edges", edges_words(m));
  text += labelled("fill factor", fmt::format("{} of the wound volume is fiber", figure(m.fill_factor, 4)));
  const double asked = plan.limits().rim_clearance_mm;
  text += labelled("rim clearance",
                   fmt::format("{} mm{}", figure(m.rim_clearance_mm, 2),
                               asked > 0.0 ? fmt::format(" (the plan asks for {} mm)", setting(asked)) : ""));
  if (m.wind_time_s) text += labelled("winding time", duration_text(*m.wind_time_s) + " at the planned line speed");
  text += labelled("ended because", stopped_words(build.stopped_by));
  text +=
      labelled("computed with", fmt::format("{} stations per turn, seed {}", build.stations_per_turn, build.seed));
  return text;
}

std::string layer_row(const LayerRow& layer) {
  const auto [number, way, turns, length, diameter, rise, gaps, crossings, bridged] = layer_cells(layer, false);
  return fmt::format("  {:>5} {:>5} {:>10} {:>11} {:>13} {:>7} {:>10} {:>10} {:>9}\n", number, way, turns, length,
                     diameter, rise, gaps, crossings, bridged);
}

std::string rest_in(const SummaryStyle& style) {
  return style.whole_lists_in.empty() ? "" : "; the whole list: " + style.whole_lists_in;
}

std::string layer_table(const std::vector<LayerRow>& layers, const SummaryStyle& style) {
  std::string text = "Layers\n";
  text += fmt::format("  {:>5} {:>5} {:>10} {:>11} {:>13} {:>7} {:>10} {:>10} {:>9}\n", "layer", "way", "turns",
                      "length", "mean diameter", "rise", "open gaps", "crossings", "bridged");
  text += fmt::format("  {:>5} {:>5} {:>10} {:>11} {:>13} {:>7} {:>10} {:>10} {:>9}\n", "", "", "", "m", "mm", "d",
                      "m", "", "%");
  const bool whole = layers.size() <= style.most_layers;
  const std::size_t head = whole ? layers.size() : style.most_layers * 2 / 3;
  const std::size_t tail = whole ? 0 : style.most_layers - head;
  for (std::size_t i = 0; i < head; ++i) text += layer_row(layers[i]);
  if (!whole) {
    text += fmt::format("  {:>5} {} not shown{}\n", "...", counted(layers.size() - head - tail, "layer"),
                        rest_in(style));
    for (std::size_t i = layers.size() - tail; i < layers.size(); ++i) text += layer_row(layers[i]);
  }
  return text;
}

std::string extent(const std::array<double, 2>& range, int decimals, const char* unit) {
  const std::string from = figure(range[0], decimals), to = figure(range[1], decimals);
  return from == to ? fmt::format("{} {}", from, unit) : fmt::format("{} to {} {}", from, to, unit);
}

// What comes of it is told with the first of several that say the same. `told`: what was.
std::string without_what_was_told(const std::string& text, std::set<std::string>& told) {
  const std::size_t colon = text.rfind(": ");
  if (colon == std::string::npos || told.insert(text.substr(colon)).second) return text;
  return text.substr(0, colon) + '.';
}

std::string finding_lines(std::size_t number, const Finding& finding, std::set<std::string>& told) {
  std::string head = fmt::format("  {:>2}  {}, ", number, words_for(finding.kind));
  head += finding.last_layer > finding.layer ? fmt::format("layers {} to {}", finding.layer, finding.last_layer)
                                             : fmt::format("layer {}", finding.layer);
  if (finding.side) head += fmt::format(", {} flange", name_of(*finding.side));
  head += fmt::format(": {} ({} d)", in_mm(finding.size_mm), figure(finding.size_d, 2));
  if (finding.occurrences > 1 && !is_edge(finding.kind))
    head += fmt::format(" at most, {} places", figure(finding.occurrences, 0));
  head += fmt::format("; {}", name_of(finding.severity));
  const std::string place = fmt::format("from turn {}; x {}; {}; fiber {}", figure(finding.turn, 1),
                                        extent(finding.x_mm, 2, "mm"), extent(finding.angle_deg, 0, "deg"),
                                        extent({finding.length_mm[0] / 1e3, finding.length_mm[1] / 1e3}, 1, "m"));
  return head + '\n' + paragraph(without_what_was_told(finding.text, told), 6) + paragraph("Where: " + place, 6);
}

std::string findings_list(const Plan& plan, const std::vector<Finding>& findings, const SummaryStyle& style) {
  if (findings.empty()) {
    return fmt::format("Findings\n  None: no gap over {} d, no pile-up over {} d, rim clearance kept.\n",
                       setting(plan.limits().gap_d), setting(plan.limits().pile_up_d));
  }
  const auto small = static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), is_small));
  // The small ones come last.
  const std::size_t large = findings.size() - small, shown = std::min(large, style.most_findings);
  std::string text = fmt::format("Findings ({}, gravest first)\n", findings.size());
  std::set<std::string> told;
  for (std::size_t i = 0; i < shown; ++i) text += finding_lines(i + 1, findings[i], told);
  if (shown < large) text += fmt::format("  ... {} more{}\n", large - shown, rest_in(style));
  if (small > 0) {
    text += paragraph(fmt::format("{}{} small: {}{}", large > 0 ? "And " : "", small, small_findings_words(findings),
                                  rest_in(style)),
                      2);
  }
  return text;
}

}  // namespace

std::string summary_text(const Plan& plan, const Build& build, const Measurements& measurements,
                         const TakeupRun& run, const SummaryStyle& style) {
  const WindVerdict verdict = style.verdict.value_or(verdict_of(plan, build, measurements, &run));
  std::string text = title_of(plan) + '\n' + paragraph(verdict_line(verdict), 0) + '\n';
  if (!plan.file().empty()) text += labelled("plan", visible(plan.file()));
  if (const std::string order = order_words(plan.order()); !order.empty()) text += words_row("order", order);
  text += labelled("spool", spool_line(plan.spool())) + labelled("fiber", fiber_line(plan.fiber())) +
          words_row("rolling", rolling_words(plan)) + traverse_lines(plan);
  if (const std::string dialled = dial_table(plan); !dialled.empty())
    text += "\nSet on the machine; the build is laid with it\n" + dialled;
  text += '\n' + totals_lines(plan, build, measurements);
  text += '\n' + checks_table(plan, build, verdict);
  text += '\n' + layer_table(measurements.layers, style);
  text += '\n' + findings_list(plan, measurements.findings, style);
  if (run.payoff) text += '\n' + payoff_section(plan, build, *run.payoff, style.most_findings);
  if (const std::string machine = machine_text(plan, run); !machine.empty()) text += '\n' + machine;
  return text;
}

}  // namespace laywright
