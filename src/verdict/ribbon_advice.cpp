#include "verdict/ribbon_advice.h"

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "pattern/pattern_table.h"
#include "verdict/own_unit.h"

namespace laywright {
namespace {

// More than a safe setting has behind its point in any unit: its step is a thousandth of a millimetre.
constexpr std::size_t setting_digits = 6;

int layer_of_highest(const Measurements& measurements) {
  const Finding* highest = nullptr;
  for (const Finding& finding : measurements.findings) {
    const bool higher = finding.kind == FindingKind::ribbon && (!highest || finding.size_d > highest->size_d);
    if (higher) highest = &finding;
  }
  return highest != nullptr ? highest->layer : 1;
}

// Null without rows: of a stepped guide.
const PatternRow* row_of_layer(const PatternTable& table, int layer) {
  const PatternRow* row = table.rows.empty() ? nullptr : &table.rows.front();
  for (const PatternRow& each : table.rows)
    if (each.from_layer <= layer) row = &each;
  return row;
}

std::string length_of(const Plan& plan, double value_mm) {
  return in_own_unit(plan, "traverse.pitch", value_mm, setting_digits);
}

}  // namespace

std::string against_ribbon(const Plan& plan, const Measurements& measurements) {
  const PatternTable table = patterns(plan, usual_gap_d);
  const PatternRow* row = row_of_layer(table, layer_of_highest(measurements));
  const std::string where = row != nullptr && row->step ? fmt::format(" from layer {} on", row->from_layer) : "";
  if (row == nullptr || row->safe.empty()) {
    const double pitch_mm = row != nullptr ? row->cycle.pitch_mm : plan.traverse().pitch_mm;
    return fmt::format(
        "set a slightly different pitch{} (now {}), so that double strokes lie further from each other", where,
        length_of(plan, pitch_mm));
  }
  const SafeSetting& safe = row->safe.front();
  const char* what =
      safe.what == SafeSetting::What::pitch ? "a slightly different pitch" : "the right stop a little off";
  return fmt::format("set {}{}, {} (now {}): {} turns to each double stroke instead of {}", what, where,
                     length_of(plan, safe.value_mm), length_of(plan, safe.instead_of_mm),
                     figure(safe.pattern.ratio, 2), figure(row->pattern.ratio, 2));
}

}  // namespace laywright
