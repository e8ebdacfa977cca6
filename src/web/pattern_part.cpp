#include "web/pattern_part.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/spelling.h"
#include "figures/figures.h"
#include "figures/pattern_words.h"
#include "web/html.h"

namespace laywright {
namespace {

std::string row_of(const PatternRow& row) {
  return fmt::format("<tr><td>{}</td><td>{} mm</td><td>{}</td><td>{} to {} mm</td><td>{}</td></tr>\n",
                     layers_text(row), setting(row.cycle.pitch_mm), figure(row.pattern.ratio, 4),
                     figure(row.inside_mm, 1), figure(row.outside_mm, 1), name_of(row.pattern.kind));
}

std::string safe_items(const PatternRow& row) {
  std::string items;
  for (const SafeSetting& safe : row.safe) {
    items += fmt::format("<li>{} {:.3f} mm instead of {} mm: {} turns, {} d {}</li>\n", key_of(row, safe.what),
                         safe.value_mm, setting(safe.instead_of_mm), figure(safe.pattern.ratio, 4),
                         figure(std::abs(safe.pattern.nearest.ahead_d), 2),
                         safe.pattern.nearest.ahead_d > 0.0 ? "ahead" : "behind");
  }
  return items.empty() ? "" : fmt::format("<p>In a close pattern, without ribbons:</p>\n<ul>\n{}</ul>\n", items);
}

std::string words_of(const PatternRow& row, double gap_d) {
  return fmt::format("<p>{}</p>\n",
                     html_text(fmt::format("Layers {}: {}", layers_text(row), pattern_words(row, gap_d)))) +
         safe_items(row);
}

}  // namespace

std::string pattern_part(const Plan& plan) {
  const PatternTable table = patterns(plan, usual_gap_d);
  if (std::none_of(table.rows.begin(), table.rows.end(), is_crossed)) return "";
  std::string rows, words;
  for (const PatternRow& row : table.rows) {
    rows += row_of(row);
    words += words_of(row, table.gap_d);
  }
  return fmt::format(
      "<h2>Pattern</h2>\n<div class=\"wide\"><table class=\"pattern\">\n<thead><tr><th scope=\"col\">Layers</th><th "
      "scope=\"col\">Pitch</th><th scope=\"col\">Turns to a double stroke</th><th scope=\"col\">Diameter</th><th "
      "scope=\"col\">Pattern</th></tr></thead>\n<tbody>\n{}</tbody>\n</table></div>\n{}<p>{}</p>\n",
      rows, words, html_text(estimate_words(table)));
}

}  // namespace laywright
