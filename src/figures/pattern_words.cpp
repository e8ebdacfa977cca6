#include "figures/pattern_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "figures/figures.h"

namespace laywright {
namespace {

// "the one before", "the one 3 double strokes before".
std::string earlier(int starts) {
  return starts == 1 ? "the one before" : fmt::format("the one {} double strokes before", starts);
}

std::string turning_words(const Pattern& pattern) {
  return fmt::format("The spool turns {} times while the guide goes to the other stop and comes back",
                     figure(pattern.ratio, 4));
}

std::string kind_words(const Pattern& pattern) {
  const Displacement& near = pattern.nearest;
  const std::string off = figure(std::abs(near.ahead_d), 2);
  switch (pattern.kind) {
    case PatternKind::close_wind:
      return fmt::format(
          "a close wind: the pitch is not coarser than {} fiber diameters, so turn lies beside turn and no other "
          "fiber fits between, and there are no ribbons. {}: near to a whole number, within a tenth, layers keep "
          "their order longer.",
          setting(close_wind_d), turning_words(pattern));
    case PatternKind::ribbon:
      return fmt::format(
          "a ribbon. {}, {}{}. So each double stroke lies on {}, {}, and they pile up in a narrow ridge with open "
          "space beside it.",
          turning_words(pattern), near.ahead_mm == 0.0 ? "exactly " : "nearly ",
          near.starts == 1 ? fmt::format("the whole number {}", near.turns) : fraction_text(near),
          earlier(near.starts),
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

bool has_pitch(const PatternRow& row) {
  return std::any_of(row.safe.begin(), row.safe.end(),
                     [](const SafeSetting& safe) { return safe.what == SafeSetting::What::pitch; });
}

}  // namespace

bool is_crossed(const PatternRow& row) { return row.pattern.kind != PatternKind::close_wind; }

std::string layers_text(const PatternRow& row) {
  if (!row.reached) return fmt::format("{} on", row.from_layer);
  return row.from_layer == row.to_layer ? fmt::format("{}", row.from_layer)
                                        : fmt::format("{}-{}", row.from_layer, row.to_layer);
}

std::string fraction_text(const Displacement& near) {
  return near.starts == 1 ? fmt::format("{}", near.turns) : fmt::format("{}/{}", near.turns, near.starts);
}

std::string beside_text(double ahead, int decimals) {
  const std::string size = figure(std::abs(ahead), decimals);
  const bool none = size.find_first_of("123456789") == std::string::npos;
  return none ? size : size + (ahead > 0.0 ? " ahead" : " behind");
}

PatternCells pattern_heads() { return {"Layers", "Pitch", "Turns to a double stroke", "Diameter", "Pattern"}; }

PatternCells pattern_cells(const PatternRow& row, bool inch) {
  return {layers_text(row), short_size_text(row.cycle.pitch_mm, 4, inch), figure(row.pattern.ratio, 4),
          fmt::format("{} to {}", figure_in(Amount::small_length, row.inside_mm, 1, inch),
                      amount_text(Amount::small_length, row.outside_mm, 1, inch)),
          name_of(row.pattern.kind)};
}

std::string safe_words(const PatternRow& row, const SafeSetting& safe, bool inch) {
  return fmt::format("{} {} instead of {}: {} turns, {} d {}", key_of(row, safe.what),
                     size_text(safe.value_mm, inch), short_size_text(safe.instead_of_mm, 4, inch),
                     figure(safe.pattern.ratio, 4), figure(std::abs(safe.pattern.nearest.ahead_d), 2),
                     safe.pattern.nearest.ahead_d > 0.0 ? "ahead" : "behind");
}

std::string pattern_words(const PatternRow& row, double gap_d) {
  const char* unreached = row.reached ? "" : " By the estimate the wind ends before these layers.";
  return kind_words(row.pattern) + outside_words(row) + scatter_words(row, gap_d) + short_words(row) + unreached;
}

std::string no_pitch_words(const PatternRow& row) {
  const bool asked = row.pattern.kind == PatternKind::ribbon || row.pattern.kind == PatternKind::open;
  if (!asked || has_pitch(row)) return "";
  return fmt::format(
      "Layers {}: no pitch near {} mm does in steps of {} mm; that moves so fine a fiber too far in {} turns.{}",
      layers_text(row), setting(row.cycle.pitch_mm), setting(setting_step_mm), figure(row.pattern.ratio, 0),
      row.safe.empty() ? " Nor does a stop." : "");
}

std::string stepped_words() {
  return "The guide is stepped: it stands at the same places in every double stroke, and the turns lie in columns "
         "whatever the ratio. Patterns of crossed winds are those of a continuous guide.";
}

std::string estimate_words(const PatternTable& table) {
  std::string words =
      "This is where the guide leads the fiber. A round fiber that crosses others gives way to them by up to a "
      "third of its diameter: see how it comes out in the build.";
  const bool ribbons = std::any_of(table.rows.begin(), table.rows.end(),
                                   [](const PatternRow& row) { return row.pattern.kind == PatternKind::ribbon; });
  if (ribbons) {
    words +=
        " Diameters are estimated as of a wind without ribbons. Ribbons stand over them: 600 turns of 0.9 mm at a "
        "whole "
        "ratio on a barrel of 125 mm came to 143 mm in the middle and 154 mm at the highest ribbon, where the "
        "estimate is "
        "134 mm.";
  }
  return words;
}

}  // namespace laywright
