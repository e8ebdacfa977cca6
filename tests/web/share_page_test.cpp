#include "web/share_page.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "figures/pattern_words.h"
#include "figures/wind_rows.h"
#include "model/wound.h"
#include "verdict/verdict_words.h"
#include "web/html.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

constexpr const char* hostile = "</script><img src=x onerror=alert(1)>{{PLAN}}\"'&<!--";

std::string between(const std::string& text, const std::string& begin, const std::string& end) {
  const std::size_t from = text.find(begin) + begin.size();
  return text.substr(from, text.find(end, from) - from);
}

WindVerdict verdict_on(const Plan& plan, const Wound& was) {
  Progress progress;
  const TakeupRun run = take_up(plan, was.build, was.measured, progress);
  return verdict_of(plan, was.build, was.measured, &run);
}

}  // namespace

// RFC 4648, section 10.
TEST_CASE("base64 by its test vectors") {
  CHECK(data_uri("a/b", "") == "data:a/b;base64,");
  CHECK(data_uri("a/b", "f") == "data:a/b;base64,Zg==");
  CHECK(data_uri("a/b", "fo") == "data:a/b;base64,Zm8=");
  CHECK(data_uri("a/b", "foo") == "data:a/b;base64,Zm9v");
  CHECK(data_uri("a/b", "foob") == "data:a/b;base64,Zm9vYg==");
  CHECK(data_uri("a/b", "fooba") == "data:a/b;base64,Zm9vYmE=");
  CHECK(data_uri("a/b", "foobar") == "data:a/b;base64,Zm9vYmFy");
  CHECK(data_uri("a/b", "\xFF\xEF\xBE") == "data:a/b;base64,/+++");
}

TEST_CASE("text in HTML is text") {
  CHECK(html_text("a < b & \"c\" 'd' >") == "a &lt; b &amp; &quot;c&quot; &#39;d&#39; &gt;");
  CHECK(html_text("\xC3\x98 5 mm") == "\xC3\x98 5 mm");
  CHECK(html_text("\xFF") == "\xEF\xBF\xBD");
}

TEST_CASE("what a plan says cannot leave its place in the page") {
  PlanDraft draft = sample("parallel").draft();
  draft.title = draft.notes = hostile;
  const Result<Plan> plan = check(draft);
  REQUIRE(plan.ok());
  const Wound was = wound(plan.value(), 0.2);
  const std::string plan_text = std::string("title = \"") + hostile + "\xE2\x80\xA8\"";
  const WindVerdict verdict = verdict_on(plan.value(), was);
  const SharedWind wind{plan_text, plan.value(), was.build, was.measured, verdict, {{"image/png", "PNG", hostile}}};
  const std::string page = share_page(
      "<title>{{TITLE}}</title><p>{{SUBTITLE}}</p>{{STATIC}}<script type=\"application/json\" id=\"plan\">"
      "{{PLAN}}</script>{{other}}",
      wind);

  CHECK(page.find("<img src=x") == std::string::npos);
  CHECK(page.find("<!--") == std::string::npos);
  CHECK(between(page, "<title>", "</title>") == html_text(hostile));
  CHECK_THAT(page, Contains("{{other}}"));
  // The one end of a script is the template's own.
  CHECK(page.find("</script>") == page.rfind("</script>"));
  CHECK(page.find("\xE2\x80\xA8") == std::string::npos);
  const auto json = nlohmann::json::parse(between(page, "id=\"plan\">", "</script>"));
  CHECK(json.at("text") == plan_text);
  CHECK(json.at("seed") == 1);
}

TEST_CASE("the still page has every layer and finding") {
  const Plan plan = sample("parallel");
  const Wound was = wound(plan);
  REQUIRE_FALSE(was.measured.findings.empty());
  const WindVerdict verdict = verdict_on(plan, was);
  const std::string page = share_page("{{STATIC}}", {"", plan, was.build, was.measured, verdict, {}});
  for (const Finding& found : was.measured.findings) CHECK_THAT(page, Contains(html_text(found.text)));
  for (const FigureRow& row : wind_figures(was.build, was.measured, false))
    CHECK_THAT(page, Contains("<th scope=\"row\">" + row.name + "</th><td>" + html_text(row.value)));
  for (const LayerRow& layer : was.measured.layers)
    CHECK_THAT(page, Contains("<td>" + layer_cells(layer, false)[3] + "</td><td>" + layer_cells(layer, false)[4]));
  CHECK_THAT(page,
             Contains("<p class=\"verdict\" data-grade=\"good\">" + html_text(verdict_line(verdict)) + "</p>"));
  std::size_t rows = 0;
  for (std::size_t at = 0; (at = page.find("<tr><td>", at)) != std::string::npos; ++at) ++rows;
  CHECK(rows == was.measured.layers.size() + verdict.checks.size());
}

TEST_CASE(
    "the still page tells the patterns of a crossed wind, with the settings of laywright pattern, and of no other") {
  const Plan crossed = sample("whole-ratio");
  const Wound was = wound(crossed, 0.2);
  const std::string page =
      share_page("{{STATIC}}", {"", crossed, was.build, was.measured, verdict_on(crossed, was), {}});
  const PatternTable table = patterns(crossed, usual_gap_d);
  const PatternRow& row = table.rows.at(0);
  CHECK_THAT(page, Contains("<td>1-80</td><td>20 mm</td><td>15.0000</td><td>125.9 to 133.9 mm</td><td>ribbon</td>"));
  CHECK_THAT(page, Contains(html_text("Layers 1-80: " + pattern_words(row, usual_gap_d))));
  REQUIRE(row.safe.size() == 4);
  CHECK_THAT(page, Contains("traverse.pitch 19.933 mm instead of 20 mm: 15.0504 turns, 1.12 d behind"));
  const Plan parallel = sample("parallel");
  const Wound other = wound(parallel, 0.2);
  CHECK_THAT(share_page("{{STATIC}}", {"", parallel, other.build, other.measured, verdict_on(parallel, other), {}}),
             !Contains("Pattern"));
}
