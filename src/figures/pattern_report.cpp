#include "figures/pattern_report.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "figures/figures.h"
#include "figures/pattern_words.h"

namespace laywright {
namespace {

// At most 100 columns for crossed winds of 100,000 layers and turns.
std::string table_line(const std::string& settings, const std::string& nearly, const std::string& beside_mm,
                       const std::string& beside_d, const std::string& back, const std::string& verdict) {
  const std::string line =
      fmt::format("{} {:>7}  {:<14} {:>6} {:>5}  {}", settings, nearly, beside_mm, beside_d, back, verdict);
  return line.substr(0, line.find_last_not_of(' ') + 1) + '\n';
}

std::string settings_of(const std::string& layers, const std::string& pitch, const std::string& turns,
                        const std::string& in, const std::string& out) {
  return fmt::format("  {:<12} {:>8} {:>11} {:>5} {:>5}", layers, pitch, turns, in, out);
}

std::string table_head() {
  return table_line(settings_of("layers", "pitch", "turns per", "angle", "deg"), "nearly", "beside the", "same",
                    "back", "verdict") +
         table_line(settings_of("", "mm", "dbl. stroke", "in", "out"), "", "earlier, mm", "in d", "after", "");
}

std::string table_row(const PatternRow& row) {
  const std::string settings =
      settings_of(layers_text(row), setting(row.cycle.pitch_mm), figure(row.pattern.ratio, 4),
                  figure(row.inside_angle_rad * deg_per_rad, 2), figure(row.outside_angle_rad * deg_per_rad, 2));
  const Pattern& pattern = row.pattern;
  if (!is_crossed(row)) return table_line(settings, "-", "-", "-", "-", name_of(pattern.kind));
  return table_line(settings, fraction_text(pattern.nearest), beside_text(pattern.nearest.ahead_mm, 3),
                    figure(std::abs(pattern.nearest.ahead_d), 2), std::to_string(pattern.returns_after),
                    name_of(pattern.kind));
}

std::string safe_rows(const PatternRow& row) {
  std::string text;
  for (const SafeSetting& safe : row.safe) {
    text += fmt::format("  {:<24} {:>11} {:>15}   {:>11} {:>7}  {:<12} {:>5}\n", key_of(row, safe.what),
                        figure(safe.value_mm, 3) + " mm", setting(safe.instead_of_mm) + " mm",
                        figure(safe.pattern.ratio, 4), fraction_text(safe.pattern.nearest),
                        beside_text(safe.pattern.nearest.ahead_d, 2), safe.pattern.returns_after);
  }
  return text;
}

std::string safe_text(const PatternTable& table) {
  std::string rows, none;
  for (const PatternRow& row : table.rows) {
    rows += safe_rows(row);
    const std::string words = no_pitch_words(row);
    if (!words.empty()) none += paragraph(words, 2);
  }
  if (rows.empty()) return none.empty() ? "" : '\n' + none;
  std::string text =
      fmt::format("\nOne of these lays it in a close pattern, a gap of {} d between fibers\n", setting(table.gap_d));
  text += fmt::format("  {:<24} {:>11} {:>15}   {:>11} {:>7}  {:<12} {:>5}\n", "set", "to", "instead of", "turns",
                      "beside", "beside by, d", "back");
  text += rows;
  text += paragraph(
      "Ahead (a leading pattern): farther on in the direction in which the guide goes; behind (trailing): not so "
      "far.",
      2);
  if (table.rows.size() > 1) {
    text +=
        paragraph("A step keeps what it does not set from the layers before it: set one thing, then ask again.", 2);
  }
  return text + none;
}

}  // namespace

std::string pattern_text(const Plan& plan, const PatternTable& table) {
  std::string text = title_of(plan) + '\n';
  if (table.stepped) return text + paragraph(stepped_words(), 2);
  text += fmt::format("  fiber {} mm; diameters and the number of layers are estimates\n\n",
                      setting(plan.fiber().diameter_mm));
  text += table_head();
  for (const PatternRow& row : table.rows) text += table_row(row);
  const bool crossed = std::any_of(table.rows.begin(), table.rows.end(), is_crossed);
  if (crossed) {
    text += paragraph(
        "In and out: at the first of these layers and at the last. Nearly: the number that the turns are compared "
        "with. Beside: how far the fiber lies beside that of the earlier double stroke, d its diameter. Back after: "
        "so many double strokes later it lies where the first one lay.",
        2);
  }
  text += '\n';
  for (const PatternRow& row : table.rows) {
    text += paragraph(fmt::format("Layers {}, stroke {} mm: {}", layers_text(row), setting(row.cycle.stroke_mm),
                                  pattern_words(row, table.gap_d)),
                      2);
  }
  text += safe_text(table);
  if (crossed) text += '\n' + paragraph(estimate_words(table), 2);
  return text;
}

}  // namespace laywright
