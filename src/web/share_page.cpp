#include "web/share_page.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/spelling.h"
#include "figures/figures.h"
#include "figures/verdict_text.h"
#include "figures/wind_rows.h"
#include "measure/severity.h"
#include "verdict/verdict_words.h"
#include "web/html.h"
#include "web/pattern_part.h"

namespace laywright {
namespace {

std::string row(std::string_view name, std::string_view value) {
  return fmt::format("<tr><th scope=\"row\">{}</th><td>{}</td></tr>\n", html_text(name), html_text(value));
}

std::string title_on(const SharedWind& wind) {
  return wind.customer != nullptr ? wind.customer->letter.title : title_of(wind.plan);
}

std::string subtitle_on(const SharedWind& wind) {
  return wind.customer != nullptr ? address_line(wind.customer->letter) : settings_line(wind.plan);
}

std::string figures_table(const SharedWind& wind) {
  std::string rows;
  for (const FigureRow& each : wind_figures(wind.build, wind.measurements, false))
    rows += row(each.name, each.more.empty() ? each.value : fmt::format("{}: {}", each.value, each.more));
  return fmt::format("<table>\n<tbody>\n{}</tbody>\n</table>\n", rows);
}

std::string layers_table(const std::vector<LayerRow>& layers) {
  std::string rows;
  for (const LayerRow& layer : layers) rows += html_row(layer_cells(layer, false)) + '\n';
  return fmt::format("<table>\n<thead>{}</thead>\n<tbody>\n{}</tbody>\n</table>\n", html_head(layer_heads(false)),
                     rows);
}

std::string verdict_part(const SharedWind& wind) {
  std::string rows;
  for (const Check& check : wind.verdict.checks) {
    rows += fmt::format("<tr><td>{}</td><td>{}</td><td>{}</td><td>{}</td><td>{}</td></tr>\n",
                        html_text(capitalised(name_of(check))), html_text(value_text(check)),
                        html_text(limit_text(check)), html_text(margin_text(check)), name_of(check.grade));
  }
  return fmt::format(
      "<p class=\"verdict\" data-grade=\"{}\">{}</p>\n<details><summary>Weighed as {}</summary>\n<div "
      "class=\"wide\"><table class=\"checks\">\n<thead><tr><th scope=\"col\">Weighed</th><th "
      "scope=\"col\">Figure</th><th scope=\"col\">Limit</th><th scope=\"col\">Margin</th><th "
      "scope=\"col\">Grade</th></tr></thead>\n<tbody>\n{}</tbody>\n</table></div>\n<p>{}</p></details>\n",
      name_of(wind.verdict.grade), html_text(verdict_line(wind.verdict)), html_text(weighed_as(wind.plan)), rows,
      html_text(draw_words(wind.build, wind.verdict)));
}

std::string finding_items(const std::vector<Finding>& findings, bool small) {
  std::string items;
  for (const Finding& found : findings) {
    if (is_small(found) != small) continue;
    items += fmt::format("<li><strong>{}</strong> {}<br>{}</li>\n", html_text(capitalised(words_for(found.kind))),
                         html_text(finding_line(found, false)), html_text(found.text));
  }
  return items.empty() ? "" : fmt::format("<ol>\n{}</ol>\n", items);
}

// The small ones folded away.
std::string findings_list(const std::vector<Finding>& findings) {
  if (findings.empty()) return "<p>Nothing in this build is over the limits that the plan sets.</p>\n";
  std::string list = finding_items(findings, false);
  const std::string small = finding_items(findings, true);
  if (small.empty()) return list;
  return list + fmt::format("<details class=\"small\"><summary>Small: {}</summary>\n{}</details>\n",
                            html_text(small_findings_words(findings)), small);
}

std::string pictures_of(const std::vector<SharePicture>& pictures) {
  std::string figures;
  for (const SharePicture& picture : pictures) {
    const std::string caption = html_text(picture.caption);
    figures +=
        fmt::format("<figure><img src=\"{}\" alt=\"{}\" decoding=\"async\"><figcaption>{}</figcaption></figure>\n",
                    data_uri(picture.media_type, picture.bytes), caption, caption);
  }
  return fmt::format("<div class=\"pictures\">\n{}</div>\n", figures);
}

std::string still_page(const SharedWind& wind) {
  std::string page =
      fmt::format("<h1>{}</h1>\n<p>{}</p>\n", html_text(title_on(wind)), html_text(subtitle_on(wind)));
  if (!wind.plan.notes().empty()) page += fmt::format("<p>{}</p>\n", html_text(wind.plan.notes()));
  return page + verdict_part(wind) + pictures_of(wind.pictures) + "<h2>Figures</h2>\n" + figures_table(wind) +
         "<h2>Findings</h2>\n" + findings_list(wind.measurements.findings) + pattern_part(wind.plan) +
         "<h2>Layers</h2>\n<div class=\"wide\">" + layers_table(wind.measurements.layers) + "</div>\n";
}

// One printed page; what is folded is not printed.
std::string still_letter(const SharedWind& wind) {
  const CustomerPage& customer = *wind.customer;
  const auto folded = [](const char* name, const std::string& inside) {
    return fmt::format("<details><summary>{}</summary>\n{}</details>\n", name, inside);
  };
  std::string page = fmt::format("<div class=\"letterhead\"><div><h1>{}</h1>\n<p>{}</p></div>\n{}</div>\n",
                                 html_text(title_on(wind)), html_text(subtitle_on(wind)), logo_part(customer));
  page += pictures_of(wind.pictures) + letter_part(customer);
  if (customer.letter.verdict)
    page += fmt::format("<p class=\"verdict\" data-grade=\"{}\">{}</p>\n", name_of(wind.verdict.grade),
                        html_text(verdict_line(wind.verdict)));
  if (customer.letter.notes && !wind.plan.notes().empty())
    page += folded("Notes", fmt::format("<p>{}</p>\n", html_text(wind.plan.notes())));
  return page + folded("All figures", figures_table(wind)) +
         folded("What the computation found", findings_list(wind.measurements.findings));
}

std::string plan_json(const SharedWind& wind) {
  nlohmann::json json = {{"text", std::string(wind.plan_text)}, {"seed", wind.build.seed}};
  if (wind.customer != nullptr) json["customer"] = {{"verdict", wind.customer->letter.verdict}};
  return json_in_html(json.dump(-1, ' ', true, nlohmann::json::error_handler_t::replace));
}

}  // namespace

std::string share_page(std::string_view page_template, const SharedWind& wind) {
  struct Part {
    std::string_view name;
    std::string value;
  };
  const CustomerPage* const customer = wind.customer;
  const std::array<Part, 7> parts{{{"{{TITLE}}", html_text(title_on(wind))},
                                   {"{{SUBTITLE}}", html_text(subtitle_on(wind))},
                                   {"{{STATIC}}", customer != nullptr ? still_letter(wind) : still_page(wind)},
                                   {"{{LOGO}}", customer != nullptr ? logo_part(*customer) : ""},
                                   {"{{LETTER}}", customer != nullptr ? letter_part(*customer) : ""},
                                   {"{{FOR}}", customer != nullptr ? "customer" : "winder"},
                                   {"{{PLAN}}", plan_json(wind)}}};
  std::string page;
  // Once through: what was put in is never looked at again.
  for (std::size_t at = 0; at < page_template.size();) {
    const std::size_t open = page_template.find("{{", at);
    page += page_template.substr(at, open == std::string_view::npos ? open : open - at);
    if (open == std::string_view::npos) break;
    const auto part = std::find_if(parts.begin(), parts.end(), [&](const Part& each) {
      return page_template.substr(open).starts_with(each.name);
    });
    page += part != parts.end() ? part->value : "{{";
    at = open + (part != parts.end() ? part->name.size() : 2);
  }
  return page;
}

}  // namespace laywright
