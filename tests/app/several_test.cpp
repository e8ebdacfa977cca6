// Commands that are given several plans at once.
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

constexpr const char* broken_plan = "format = \"lay-plan 1\"\n";

// a (60 turns) and b (90 turns) are sound, c is not.
struct ShopOfThree : Workshop {
  ShopOfThree() {
    write("a.lay.toml", small_plan());
    write("b.lay.toml", small_plan(90));
    write("c.lay.toml", broken_plan);
  }
};

// What stands below "plan ... verdict" of the table, from the row of that plan on.
std::string row_of(const std::string& out, const std::string& plan) {
  const std::size_t table = out.rfind("  plan ");
  return table == std::string::npos ? "" : out.substr(std::min(out.find("\n  " + plan, table), out.size()));
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("several plans are each reported on as alone, and a table ends it") {
  const ShopOfThree shop;
  const std::string alone = shop.run("$LW lay b.lay.toml").out;
  const Ran both = shop.run("$LW lay a.lay.toml b.lay.toml");
  CHECK(both.code == 0);
  CHECK(both.err.empty());
  CHECK_THAT(both.out, Contains("== b.lay.toml ==\n\n" + alone));
  CHECK_THAT(row_of(both.out, "a.lay.toml"), Contains(" 60.0 ") && Contains(" 90.0 ") && Contains("mm"));
  CHECK(count_of(row_of(both.out, "a.lay.toml"), "(this draw)") == 2);
  CHECK(both.out.ends_with(row_of(both.out, "a.lay.toml")));
}

TEST_CASE("a plan that is not sound keeps none of the others from being made, and decides the exit code") {
  const ShopOfThree shop;
  for (const char* command :
       {"lay c.lay.toml a.lay.toml b.lay.toml --out out", "sheet c.lay.toml a.lay.toml b.lay.toml -o out",
        "picture c.lay.toml a.lay.toml b.lay.toml -o out --size 64x64"}) {
    CAPTURE(command);
    const Ran ran = shop.run(std::string("$LW ") + command);
    CHECK(ran.code == 1);
    CHECK_THAT(ran.err, Contains("c.lay.toml:") && !Contains("a.lay.toml"));
    CHECK_THAT(row_of(ran.out, "c.lay.toml"), Contains("not sound"));
    CHECK_THAT(row_of(ran.out, "a.lay.toml"), Contains(" 60.0 "));
    CHECK_THAT(row_of(ran.out, "b.lay.toml"), Contains(" 90.0 "));
  }
  for (const char* file : {"a/summary.txt", "b/sheet.pdf", "a.pdf", "b.pdf", "a.png", "b.png"})
    CHECK(fs::is_regular_file(shop.at("out") / file));
  CHECK_FALSE(fs::exists(shop.at("out/c")));
  CHECK(content(shop.at("out/a/summary.txt")) != content(shop.at("out/b/summary.txt")));
}

TEST_CASE("what several plans get is what each gets alone") {
  const ShopOfThree shop;
  REQUIRE(shop.run("$LW lay a.lay.toml b.lay.toml --out out && $LW lay b.lay.toml --out alone").code == 0);
  CHECK(content(shop.at("out/b/build.json")) == content(shop.at("alone/build.json")));
  CHECK(content(shop.at("out/b/path.csv")) == content(shop.at("alone/path.csv")));
  REQUIRE(shop.run("$LW sheet a.lay.toml b.lay.toml -o out && $LW sheet b.lay.toml -o alone.pdf").code == 0);
  CHECK(content(shop.at("out/b.pdf")) == content(shop.at("alone.pdf")));
  REQUIRE(shop.run("$LW picture a.lay.toml b.lay.toml -o out --size 64x64 && "
                   "$LW picture b.lay.toml -o alone.png --size 64x64")
              .code == 0);
  CHECK(content(shop.at("out/b.png")) == content(shop.at("alone.png")));
}

TEST_CASE("several plans give one document, of which each build is that of the plan alone") {
  const ShopOfThree shop;
  const Ran ran = shop.run("$LW lay --json a.lay.toml c.lay.toml b.lay.toml");
  CHECK(ran.code == 1);
  const auto document = nlohmann::json::parse(ran.out);
  CHECK(document["format"] == "lay-builds 1");
  REQUIRE(document["plans"].size() == 3);
  CHECK(document["plans"][1]["file"] == "c.lay.toml");
  CHECK(document["plans"][1]["verdict"] == "not sound");
  CHECK(document["plans"][1]["build"].is_null());
  CHECK(document["plans"][2]["build"] == nlohmann::json::parse(shop.run("$LW lay --json b.lay.toml").out));
  CHECK(document["plans"][2]["verdict"] == document["plans"][2]["build"]["verdict"]["grade"]);
}

TEST_CASE("a plan that is named twice is told, and made once") {
  const ShopOfThree shop;
  fs::create_symlink(shop.at("a.lay.toml"), shop.at("link.lay.toml"));
  for (const char* again : {"a.lay.toml", "./a.lay.toml", "link.lay.toml"}) {
    CAPTURE(again);
    const Ran ran = shop.run(std::string("$LW lay a.lay.toml b.lay.toml --out out ") + again);
    CHECK(ran.code == 0);
    CHECK_THAT(ran.err, Contains(std::string(again) + ": named twice"));
    CHECK(count_of(ran.out, "a.lay.toml") == 1);
  }
  // Then it is one plan, with what one plan prints.
  CHECK(shop.run("$LW lay a.lay.toml ./a.lay.toml").out == shop.run("$LW lay a.lay.toml").out);
  CHECK(shop.run("$LW sheet a.lay.toml a.lay.toml -o one.pdf").code == 0);
}

TEST_CASE("what would clash or be lost is refused before anything is laid") {
  const ShopOfThree shop;
  fs::create_directory(shop.at("sub"));
  shop.write("sub/a.lay.toml", small_plan(200'000));
  shop.write("sub/long.lay.toml", small_plan(200'000));
  struct Refused {
    const char *command, *says;
  };
  for (const Refused& refused :
       {Refused{"lay a.lay.toml sub/a.lay.toml --out out", "of a.lay.toml (a/ in out)"},
        Refused{"sheet a.lay.toml sub/a.lay.toml -o out", "of a.lay.toml (a.pdf in out)"},
        Refused{"picture a.lay.toml sub/a.lay.toml -o out", "of a.lay.toml (a.png in out)"},
        Refused{"sheet sub/long.lay.toml a.lay.toml -o out.pdf", "out.pdf names one file"},
        Refused{"picture sub/long.lay.toml a.lay.toml -o out.png", "out.png names one file"},
        Refused{"sheet sub/long.lay.toml a.lay.toml -o out --page 1", "--page"},
        Refused{"sheet a.lay.toml -o out", ".pdf, .svg or .png"}}) {
    CAPTURE(refused.command);
    const Ran ran = shop.run(std::string("$LW ") + refused.command);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(refused.says));
  }
  CHECK_FALSE(fs::exists(shop.at("out")));
  // An output that is one of the plans.
  fs::create_directory(shop.at("in"));
  fs::create_symlink(shop.at("b.lay.toml"), shop.at("in/a.pdf"));
  const Ran lost = shop.run("$LW sheet a.lay.toml b.lay.toml -o in");
  CHECK(lost.code == 2);
  CHECK_THAT(lost.err, Contains("would be lost"));
}

TEST_CASE("stopped, several plans keep what is done, and say of how many nothing was written") {
  const ShopOfThree shop;
  shop.write("long.lay.toml", small_plan(200'000));
  const Ran at_once = shop.stopped("lay long.lay.toml a.lay.toml --out out");
  CHECK(at_once.code == 130);
  CHECK(at_once.out.empty());
  CHECK_THAT(at_once.err, Contains("stopped; nothing was written"));
  CHECK_FALSE(fs::exists(shop.at("out")));

  // The signal comes when the sheet of the first is there.
  const Ran later = shop.run(
      "env --default-signal=INT \"$LW\" lay a.lay.toml long.lay.toml b.lay.toml --out out & "
      "until test -e out/a/summary.txt; do sleep 0.01; done; kill -INT $!; wait $!");
  CHECK(later.code == 130);
  CHECK_THAT(later.err, Contains("stopped after 1 of 3 plans; of the others nothing was written"));
  CHECK_THAT(row_of(later.out, "a.lay.toml"), Contains(" 60.0 ") && !Contains("b.lay.toml"));
  CHECK(fs::is_regular_file(shop.at("out/a/sheet.pdf")));
  CHECK_FALSE(fs::exists(shop.at("out/long")));
  CHECK_FALSE(fs::exists(shop.at("out/b")));
}

TEST_CASE("an output that cannot be written is told in the row, and the others are made") {
  const ShopOfThree shop;
  fs::create_directories(shop.at("out/a.pdf"));
  const Ran ran = shop.run("$LW sheet a.lay.toml b.lay.toml -o out");
  CHECK(ran.code == 3);
  CHECK_THAT(row_of(ran.out, "a.lay.toml"),
             Contains("not written") && Contains("a folder of that name stands there"));
  CHECK(fs::is_regular_file(shop.at("out/b.pdf")));
}
