#include "web/pattern_part.h"

#include <algorithm>

#include <fmt/format.h>

#include "figures/pattern_words.h"
#include "web/html.h"

namespace laywright {
namespace {

std::string safe_items(const PatternRow& row) {
  std::string items;
  for (const SafeSetting& safe : row.safe)
    items += fmt::format("<li>{}</li>\n", html_text(safe_words(row, safe, false)));
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
    rows += html_row(pattern_cells(row, false)) + '\n';
    words += words_of(row, table.gap_d);
  }
  return fmt::format(
      "<h2>Pattern</h2>\n<div class=\"wide\"><table "
      "class=\"pattern\">\n<thead>{}</thead>\n<tbody>\n{}</tbody>\n</table></div>\n{}<p>{}</p>\n",
      html_head(pattern_heads()), rows, words, html_text(estimate_words(table)));
}

}  // namespace laywright
