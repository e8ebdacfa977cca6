#include <catch2/catch.hpp>

#include "app/program.h"
#include "web/share_page.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

TEST_CASE("share refuses what is no plan, and no place to write") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  shop.write("bad.lay.toml", "format = \"lay-plan 1\"\n");
  CHECK(shop.run("$LW share a.lay.toml").code == 2);
  CHECK(shop.run("$LW share a.lay.toml -o a.html --seed -1").code == 2);
  CHECK(shop.run("$LW share none.lay.toml -o a.html").code == 1);
  const Ran bad = shop.run("$LW share bad.lay.toml -o a.html");
  CHECK(bad.code == 1);
  CHECK_THAT(bad.err, Contains("bad.lay.toml"));
  CHECK_FALSE(fs::exists(shop.at("a.html")));
}

TEST_CASE("without the page built in, share says how to get it") {
  if (!share_page_template().empty()) return;
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run("$LW share a.lay.toml -o a.html");
  CHECK(ran.code == 3);
  CHECK_THAT(ran.err, Contains("LAYWRIGHT_SHARE_PAGE"));
  CHECK_FALSE(fs::exists(shop.at("a.html")));
}

TEST_CASE("share writes one page, whole or not at all") {
  if (share_page_template().empty()) return;
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run("$LW share a.lay.toml -o a.html");
  CHECK(ran.code == 0);
  CHECK(ran.out.empty());
  CHECK(ran.err.empty());
  const std::string page = content(shop.at("a.html"));
  CHECK_THAT(page, Catch::StartsWith("<!doctype html>") && Catch::EndsWith("</html>\n"));
  for (const char* name : {"{{TITLE}}", "{{SUBTITLE}}", "{{STATIC}}", "{{PLAN}}", "{{SCRIPT"}) {
    CAPTURE(name);
    CHECK(page.find(name) == std::string::npos);
  }
  // Two pictures, drawn here.
  CHECK_THAT(page, Contains("data:image/png;base64,iVBORw0KGgo"));

  CHECK(shop.run("$LW share a.lay.toml -o none/a.html").code == 3);
  shop.write("kept.html", "before");
  shop.write("bad.lay.toml", "format = \"lay-plan 1\"\n");
  CHECK(shop.run("$LW share bad.lay.toml -o kept.html").code == 1);
  CHECK(content(shop.at("kept.html")) == "before");
}

TEST_CASE("a page of the same plan and seed is the same") {
  if (share_page_template().empty()) return;
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  CHECK(shop.run("$LW share a.lay.toml -o a.html && $LW share a.lay.toml -o b.html && cmp a.html b.html").code == 0);
}

TEST_CASE("nothing in the page leads out of it") {
  const std::string page(share_page_template());
  if (page.empty()) return;
  CHECK(page.size() <= 1'500'000);
  CHECK_THAT(page, Contains("default-src 'none'"));
  // No address but those that name a standard or an own part; with a sign that packed bytes do not have, : or a point.
  for (const char* scheme : {"http:", "https:", "ws:", "wss:", "ftp:", "//cdn."}) {
    CAPTURE(scheme);
    CHECK(page.find(scheme) == std::string::npos);
  }
}
