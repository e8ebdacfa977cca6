// The page for a customer, its parts and the command that writes it.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "model/wound.h"
#include "verdict/verdict_words.h"
#include "web/html.h"
#include "web/share_page.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

CustomerPage page_with(const std::string& words) {
  CustomerPage customer;
  customer.letter.title = customer.letter.sender = customer.letter.greeting = words;
  customer.summary = {"Holds " + words, "Wound " + words, "Sure " + words, "Care " + words, {{words, words}}};
  customer.logo = "PNG";
  return customer;
}

std::string page_for(const CustomerPage& customer, const std::string& page_template) {
  PlanDraft draft = sample("parallel").draft();
  draft.notes = "between us";
  const Plan plan = check(draft).value();
  const Wound was = wound(plan, 0.2);
  const WindVerdict verdict = verdict_of(plan, was.build, was.measured, nullptr);
  SharedWind wind{"", plan, was.build, was.measured, verdict, {{"image/png", "PNG", "The wound spool"}}};
  wind.customer = &customer;
  return share_page(page_template, wind);
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++count;
  return count;
}

}  // namespace

TEST_CASE("what a sender writes cannot leave its place in the page") {
  const std::string hostile = "<script>alert(1)</script><img src=x>\"'{{PLAN}}";
  const std::string page = page_for(page_with(hostile), "{{TITLE}}{{SUBTITLE}}{{LOGO}}{{LETTER}}{{STATIC}}{{FOR}}");
  CHECK(page.find("<script>") == std::string::npos);
  CHECK(page.find("<img src=x") == std::string::npos);
  CHECK(page.find("'{{PLAN}}") == std::string::npos);
  CHECK(count_of(page, html_text(hostile)) >= 10);
  CHECK_THAT(page, Catch::EndsWith("customer"));
}

TEST_CASE("a page for a customer tells verdict and notes only where it is asked to, and folds the findings") {
  CustomerPage customer = page_with("Corder");
  const std::string page = page_for(customer, "{{STATIC}}");
  CHECK_THAT(page, !Contains("data-grade") && !Contains("between us"));
  CHECK(page.find("<details><summary>What the computation found") < page.find("<ol>"));
  CHECK_THAT(page, Contains("<ol>"));
  CHECK_THAT(page_for(customer, "{{PLAN}}"), Contains("\"customer\":{\"verdict\":false}"));
  customer.letter.verdict = customer.letter.notes = true;
  CHECK_THAT(page_for(customer, "{{STATIC}}"), Contains("data-grade") && Contains("between us"));
  CHECK_THAT(page_for(customer, "{{PLAN}}"), Contains("\"customer\":{\"verdict\":true}"));
}

TEST_CASE("share refuses a letter without --for customer, one that is too long, and a logo that is none") {
  if (share_page_template().empty()) return;
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran alone = shop.run("$LW share a.lay.toml -o a.html --greeting Hello --verdict");
  CHECK(alone.code == 2);
  CHECK_THAT(alone.err, Contains("--greeting") && Contains("--verdict") && Contains("--for customer"));
  const Ran late = shop.run("$LW share a.lay.toml -o a.html --for customer --customer " + std::string(61, 'x'));
  CHECK(late.code == 1);
  CHECK_THAT(late.err, Contains("customer") && Contains("up to 60 characters"));
  shop.write("mark.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\">\n<script>alert(1)</script></svg>");
  const Ran script = shop.run("$LW share a.lay.toml -o a.html --for customer --logo mark.svg");
  CHECK(script.code == 1);
  CHECK_THAT(script.err, Contains("mark.svg:2") && Contains("a script"));
  CHECK(shop.run("$LW share a.lay.toml -o a.html --for customer --logo none.png").code == 1);
  shop.write("mark.html", "mine");
  CHECK(shop.run("$LW share a.lay.toml -o mark.html --for customer --logo mark.html").code == 2);
  CHECK_FALSE(fs::exists(shop.at("a.html")));
}
