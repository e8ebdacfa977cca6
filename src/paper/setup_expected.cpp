// What the machine and the fiber do on the way, and what to look for on the spool.
#include <algorithm>
#include <cctype>
#include <optional>

#include <fmt/format.h>

#include "base/spelling.h"
#include "base/units.h"
#include "figures/both_units.h"
#include "figures/figures.h"
#include "figures/machine_text.h"
#include "figures/verdict_text.h"
#include "lay/torsion.h"
#include "measure/severity.h"
#include "paper/drafting.h"
#include "paper/setup_parts.h"

namespace laywright {
namespace {

// Digits that count, of the largest figure of a row.
constexpr int digits = 3;

std::string one_or_both(const std::string& from, const std::string& to) {
  if (from == to) return from;
  const bool nothing = from.find_first_of("123456789") == std::string::npos;
  return nothing ? "up to " + to : fmt::format("{} to {}", from, to);
}

// "0.500 to 0.480 N", and the same in the other system.
Row range(const SetupSheet& sheet, const std::string& label, Amount amount, double from, double to) {
  const int decimals = decimals_for(std::max(from, to), digits);
  const auto words = [&](bool inch) {
    return one_or_both(figure_in(amount, from, decimals, inch), figure_in(amount, to, decimals, inch)) + ' ' +
           unit_in(amount, inch);
  };
  const bool inch = in_inches(sheet.plan);
  return {label, words(inch), words(!inch), false};
}

Row range(const std::string& label, double from, double to, const char* unit) {
  const int decimals = decimals_for(std::max(from, to), digits);
  return {label, one_or_both(figure(from, decimals), figure(to, decimals)) + ' ' + unit, "", false};
}

// Rows that are there when their figures are.
struct Rows {
  const SetupSheet& sheet;
  RowGroup group;

  void curve(const std::string& label, Amount amount, const std::vector<double>& values, double per = 1.0) {
    if (!values.empty())
      group.rows.push_back(range(sheet, label, amount, values.front() / per, values.back() / per));
  }
  void curve(const std::string& label, const char* unit, const std::vector<double>& values, double per = 1.0) {
    if (!values.empty()) group.rows.push_back(range(label, values.front() / per, values.back() / per, unit));
  }
  void value(const std::string& label, const char* unit, const std::optional<double>& value, double per = 1.0) {
    if (value) group.rows.push_back(range(label, *value / per, *value / per, unit));
  }
  void value(const std::string& label, Amount amount, const std::optional<double>& value) {
    if (value) group.rows.push_back(range(sheet, label, amount, *value, *value));
  }
};

constexpr double percent = 1e-2;

RowGroup running(const SetupSheet& sheet) {
  const MachineCurves& c = sheet.run.curves;
  Rows rows{sheet, {"Machine, from empty to full", {}}};
  rows.curve("Guide speed", Amount::guide_speed, c.traverse_mm_per_s);
  rows.curve("Reversals", "per min", c.reversals_per_min);
  rows.curve("Clutch torque", Amount::torque, c.torque_Nmm, mm_per_m);
  rows.curve("Clutch slip at ceiling", "rpm", c.slip_rpm);
  rows.curve("Clutch heat at ceiling", "W", c.clutch_heat_W);
  rows.curve(sheet.plan.spool().mass_kg ? "Inertia, at most" : "Inertia, no spool", Amount::inertia, c.inertia_kg_m2,
             1e-4);
  rows.curve(fmt::format("Torque, ramp of {} s", setting(stated_ramp_s)), Amount::torque, c.ramp_torque_Nmm,
             mm_per_m);
  rows.value("Start in at least", "s", sheet.run.hold.shortest_start_s);
  rows.value("Run down in at least", "s", sheet.run.hold.shortest_stop_s);
  return rows.group;
}

RowGroup load(const SetupSheet& sheet) {
  const MachineCurves& c = sheet.run.curves;
  const HoldLimits& hold = sheet.run.hold;
  Rows rows{sheet, {"Fiber and spool", {}}};
  rows.value("Room left to the rim", Amount::small_length, sheet.measurements.rim_clearance_mm);
  rows.value("Fiber on the spool", Amount::mass, sheet.measurements.fiber_mass_kg);
  rows.curve("Stress in the core", Amount::pressure, c.stress_MPa);
  rows.curve("Strain in the core", "%", c.strain, percent);
  rows.curve("Share of what it bears", "%", c.load_share, percent);
  rows.value("Bend strain on barrel", "%", sheet.run.bend_strain, percent);
  const Torsion torsion = torsion_of(sheet.plan);
  if (torsion.rolls) {
    rows.value(torsion.assumed() ? "Rolls off over (assumed)" : "Rolls off over", Amount::small_length,
               roll_lengths(sheet.plan, torsion).critical_mm);
  }
  rows.value("Lies down from", Amount::force, hold.least_tension_N);
  rows.value("Start end, hold per turn", "times", hold.capstan_ratio_per_turn);
  if (sheet.run.fleet) rows.value("Fleet angle, at most", "deg", sheet.run.fleet->greatest_deg);
  if (sheet.run.pressure) {
    rows.group.rows.push_back(range(sheet, "Pressure, an estimate", Amount::pressure,
                                    sheet.run.pressure->soft.barrel_MPa, sheet.run.pressure->stiff.barrel_MPa));
  }
  return rows.group;
}

const char* look_for(FindingKind kind) {
  switch (kind) {
    case FindingKind::gap: return "Look for the layer below showing between turns.";
    case FindingKind::flange_gap: return "Look for an open groove beside the flange.";
    case FindingKind::pile_up:
      return "Lay a straight edge across: a ridge at the flange stands above what is beside it.";
    case FindingKind::edge_valley: return "Lay a straight edge across: the edge lies below what is beside it.";
    case FindingKind::ride_up: return "Look for turns that stand on their neighbours.";
    case FindingKind::dropped_turn: return "Look for turns that have sunk between others.";
    case FindingKind::bridge: return "Press lightly with the machine at rest: fiber that gives hangs free.";
    case FindingKind::ribbon: return "Look for bands with open space beside them.";
    case FindingKind::rim_overrun: return "Stop before the fiber comes to the rim.";
  }
  return "";
}

// Where in the wind, short: the place in full is in the finding's own sentence.
std::string head_of(const Finding& finding) {
  std::string head = words_for(finding.kind);
  if (finding.side) head += fmt::format(", {} flange", name_of(*finding.side));
  head += finding.last_layer > finding.layer ? fmt::format(", layers {} to {}", finding.layer, finding.last_layer)
                                             : fmt::format(", layer {}", finding.layer);
  return capitalised(std::move(head));
}

struct Item {
  std::string head, text;
};

// What there is no room for, by its kinds.
std::string rest_of(const std::vector<Item>& items, std::size_t first) {
  return fmt::format("and {} more of these and other kinds: \"laywright lay\" prints them all",
                     items.size() - first);
}

std::vector<Item> items_of(const SetupSheet& sheet) {
  std::vector<Item> items;
  for (const Finding& finding : sheet.measurements.findings) {
    if (is_small(finding)) continue;
    items.push_back({head_of(finding), finding.text + ' ' + look_for(finding.kind)});
  }
  for (const MachineWarning& warning : sheet.run.warnings) {
    if (!warning.note) continue;
    // Notes come right after the gravest finding or two, so that many findings do not push them off the sheet.
    const std::size_t place = std::min<std::size_t>(items.size(), 2);
    items.insert(items.begin() + static_cast<std::ptrdiff_t>(place),
                 {capitalised(words_for(warning.kind)), warning.text});
  }
  if (!sheet.run.missing.empty()) {
    std::string keys;
    for (const MissingKey& key : sheet.run.missing) {
      keys += fmt::format("{}{} ({})", keys.empty() ? "" : ", ", key.key, key.gives);
    }
    const std::size_t place = std::min<std::size_t>(items.size(), 4);
    items.insert(items.begin() + static_cast<std::ptrdiff_t>(place),
                 {"Not in the plan, so not told here", keys + '.'});
  }
  const std::string small = small_findings_words(sheet.measurements.findings);
  if (!small.empty()) items.push_back({"Small places, as every wind has some", small + '.'});
  return items;
}

}  // namespace

double draw_expected(Drawing& page, const Box& band, const SetupSheet& sheet) {
  constexpr double gap = 8.0;
  const double width = 0.5 * (band.width - gap);
  const double left = draw_row_groups(page, {band.left, band.top, width, band.height}, {running(sheet)});
  const double right = draw_row_groups(page, {band.left + width + gap, band.top, width, band.height}, {load(sheet)});
  return std::max(left, right);
}

double draw_findings(Drawing& page, const Box& band, const SetupSheet& sheet) {
  double top = draw_heading(page, band.left, band.width, band.top, "Expect this, and look for it") + 0.8;
  const Type head_type{2.5, true, Align::start, ink}, type{2.5, false, Align::start, ink};
  if (sheet.measurements.findings.empty()) {
    put(page, {band.left, top + 2.4}, "No finding: an even build is expected. Anything else is a reason to stop.",
        type);
    top += 4.2;
  }
  const std::vector<Item> items = items_of(sheet);
  constexpr double leading = 1.28, number_width = 4.0;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Paragraph paragraph = paragraph_of(items[i].head + '.', items[i].text, band.width - number_width, type);
    const double height = leading * type.height_mm * static_cast<double>(paragraph.lines.size());
    const bool last = i + 1 == items.size();
    if (top + height > band.bottom() - (last ? 0.0 : 3.4)) {
      put(page, {band.left + number_width, top + 2.4}, rest_of(items, i), type);
      return top + 3.4;
    }
    put(page, {band.left, top + 2.4}, fmt::format("{}", i + 1), head_type);
    top = put_paragraph(page, {band.left + number_width, top + 2.4}, paragraph, type, leading) - 2.4 + 0.6;
  }
  return top;
}

}  // namespace laywright
