#include "report/pattern_report.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "report/figures.h"

namespace laywright {
namespace {

constexpr std::size_t columns = 96;
constexpr double deg_per_rad = 180.0 / std::numbers::pi;

std::string layers_of(const PatternRow& row) {
  if (!row.reached) return fmt::format("{} on", row.from_layer);
  return row.from_layer == row.to_layer ? fmt::format("{}", row.from_layer)
                                        : fmt::format("{}-{}", row.from_layer, row.to_layer);
}

bool is_crossed(const PatternRow& row) { return row.pattern.kind != PatternKind::close_wind; }

// "15", "31/2".
std::string fraction(const Displacement& near) {
  return near.starts == 1 ? fmt::format("{}", near.turns) : fmt::format("{}/{}", near.turns, near.starts);
}

// "1.10 behind".
std::string beside(double ahead, int decimals) {
  const std::string size = figure(std::abs(ahead), decimals);
  const bool none = size.find_first_of("123456789") == std::string::npos;
  return none ? size : size + (ahead > 0.0 ? " ahead" : " behind");
}

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
      settings_of(layers_of(row), setting(row.cycle.pitch_mm), figure(row.pattern.ratio, 4),
                  figure(row.inside_angle_rad * deg_per_rad, 2), figure(row.outside_angle_rad * deg_per_rad, 2));
  const Pattern& pattern = row.pattern;
  if (!is_crossed(row)) return table_line(settings, "-", "-", "-", "-", name_of(pattern.kind));
  return table_line(settings, fraction(pattern.nearest), beside(pattern.nearest.ahead_mm, 3),
                    figure(std::abs(pattern.nearest.ahead_d), 2), std::to_string(pattern.returns_after),
                    name_of(pattern.kind));
}

// "the one before", "the one 3 double strokes before".
std::string earlier(int starts) {
  return starts == 1 ? "the one before" : fmt::format("the one {} double strokes before", starts);
}

std::string words_of(const Pattern& pattern) {
  const Displacement& near = pattern.nearest;
  const std::string off = figure(std::abs(near.ahead_d), 2);
  switch (pattern.kind) {
    case PatternKind::close_wind:
      return fmt::format(
          "a close wind: the pitch is not coarser than {} fiber diameters, so turn lies beside turn and no other "
          "fiber fits between. This command has nothing to tell of it: it is for crossed winds.",
          setting(close_wind_d));
    case PatternKind::ribbon:
      return fmt::format(
          "a ribbon. The spool turns {} times while the guide goes to the other stop and comes back, {}{}. So each "
          "double stroke lies on {}, {}, and they pile up in a narrow ridge with open space beside it.",
          figure(pattern.ratio, 4), near.ahead_mm == 0.0 ? "exactly " : "nearly ",
          near.starts == 1 ? fmt::format("the whole number {}", near.turns) : fraction(near), earlier(near.starts),
          near.ahead_mm == 0.0 ? "line on line" : fmt::format("no more than {} d off its middle", off));
    case PatternKind::close_pattern:
      return fmt::format(
          "a close pattern. Each double stroke lies beside {}, {} d {} it: near, but not on it. After {} double "
          "strokes the pattern is closed, and the next ones lie on the first.",
          earlier(near.starts), off, near.ahead_mm > 0.0 ? "ahead of" : "behind", pattern.returns_after);
    case PatternKind::open:
      return fmt::format(
          "open. Of the {} double strokes before, the nearest lies {} d away: no ribbon grows. After {} double "
          "strokes one lies where the first one lay.",
          most_starts, off, pattern.returns_after);
  }
  return "";
}

std::string scatter_words(const PatternRow& row, double gap_d) {
  if (row.pattern.kind == PatternKind::close_wind || row.scatter_d == 0.0) return "";
  return fmt::format(
      " Scatter and play of the guide move that by {} d (one sigma){}.", figure(row.scatter_d, 2),
      row.scatter_d > gap_d ? ", more than the gap: on this machine a close pattern does not hold" : "");
}

std::string outside_words(const PatternRow& row) {
  const double inside = std::abs(row.pattern.nearest.ahead_d), outside = std::abs(row.outside_ahead_d);
  if (row.pattern.kind == PatternKind::close_wind || figure(inside, 2) == figure(outside, 2)) return "";
  return fmt::format(" At the outside, where the fiber lies flatter, it is {} d.", figure(outside, 2));
}

// The strand that is spoken of must be one of these layers.
std::string short_words(const PatternRow& row) {
  const int before = 2 * row.pattern.nearest.starts;
  if (!is_crossed(row) || !row.reached || row.to_layer - row.from_layer >= before) return "";
  return " These layers are too few for that to show: the double strokes before them were laid with other settings, "
         "or none were.";
}

std::string safe_rows(const PatternRow& row) {
  std::string text;
  for (const SafeSetting& safe : row.safe) {
    text += fmt::format("  {:<24} {:>11} {:>15}   {:>11} {:>7}  {:<12} {:>5}\n", key_of(row, safe.what),
                        fmt::format("{:.3f} mm", safe.value_mm), setting(safe.instead_of_mm) + " mm",
                        figure(safe.pattern.ratio, 4), fraction(safe.pattern.nearest),
                        beside(safe.pattern.nearest.ahead_d, 2), safe.pattern.returns_after);
  }
  return text;
}

bool has_pitch(const PatternRow& row) {
  return std::any_of(row.safe.begin(), row.safe.end(),
                     [](const SafeSetting& safe) { return safe.what == SafeSetting::What::pitch; });
}

std::string safe_text(const PatternTable& table) {
  std::string rows, none;
  for (const PatternRow& row : table.rows) {
    rows += safe_rows(row);
    const bool asked = row.pattern.kind == PatternKind::ribbon || row.pattern.kind == PatternKind::open;
    if (!asked || has_pitch(row)) continue;
    none += wrapped(fmt::format("Layers {}: no pitch near {} mm does in steps of {} mm; that moves so fine a fiber "
                                "too far in {} turns.{}",
                                layers_of(row), setting(row.cycle.pitch_mm), setting(setting_step_mm),
                                figure(row.pattern.ratio, 0), row.safe.empty() ? " Nor does a stop." : ""),
                    columns, 2);
  }
  if (rows.empty()) return none.empty() ? "" : '\n' + none;
  std::string text =
      fmt::format("\nOne of these lays it in a close pattern, a gap of {} d between fibers\n", setting(table.gap_d));
  text += fmt::format("  {:<24} {:>11} {:>15}   {:>11} {:>7}  {:<12} {:>5}\n", "set", "to", "instead of", "turns",
                      "beside", "beside by, d", "back");
  text += rows;
  text += wrapped(
      "Ahead (a leading pattern): farther on in the direction in which the guide goes; behind (trailing): not so "
      "far.",
      columns, 2);
  if (table.rows.size() > 1) {
    text += wrapped("A step keeps what it does not set from the layers before it: set one thing, then ask again.",
                    columns, 2);
  }
  return text + none;
}

}  // namespace

std::string pattern_text(const Plan& plan, const PatternTable& table) {
  std::string text = title_of(plan) + '\n';
  if (table.stepped) {
    return text + wrapped(
                      "The guide is stepped: it stands at the same places in every double stroke, and the turns lie "
                      "in columns whatever the ratio. Patterns of crossed winds are those of a continuous guide.",
                      columns, 2);
  }
  text += fmt::format("  fiber {} mm; diameters and the number of layers are estimates\n\n",
                      setting(plan.fiber().diameter_mm));
  text += table_head();
  for (const PatternRow& row : table.rows) text += table_row(row);
  const bool crossed = std::any_of(table.rows.begin(), table.rows.end(), is_crossed);
  if (crossed) {
    text += wrapped(
        "In and out: at the first of these layers and at the last. Nearly: the number that the turns are compared "
        "with. Beside: how far the fiber lies beside that of the earlier double stroke, d its diameter. Back after: "
        "so many double strokes later it lies where the first one lay.",
        columns, 2);
  }
  text += '\n';
  for (const PatternRow& row : table.rows) {
    text += wrapped(
        fmt::format("Layers {}, stroke {} mm: {}{}{}{}{}", layers_of(row), setting(row.cycle.stroke_mm),
                    words_of(row.pattern), outside_words(row), scatter_words(row, table.gap_d), short_words(row),
                    row.reached ? "" : " By the estimate the wind ends before these layers."),
        columns, 2);
  }
  text += safe_text(table);
  if (crossed) {
    text += '\n' + wrapped(
                       "This is where the guide leads the fiber. A round fiber that crosses others gives way to "
                       "them by up to a third of its diameter: see how it comes out with laywright lay.",
                       columns, 2);
  }
  return text;
}

}  // namespace laywright
