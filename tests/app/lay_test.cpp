#include <algorithm>
#include <iterator>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

const char* const report_files[] = {"summary.txt", "build.json",  "layers.csv",  "findings.csv",
                                    "path.csv",    "section.svg", "section.png", "sheet.pdf"};

std::ptrdiff_t entries(const fs::path& folder) {
  return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

}  // namespace

TEST_CASE("lay prints the summary, and with --json one document only") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran text = shop.run("$LW lay a.lay.toml");
  CHECK(text.code == 0);
  CHECK(text.err.empty());
  CHECK_THAT(text.out, Contains("fill factor") && Contains("Layers") && Contains("Findings"));

  const Ran ran = shop.run("$LW lay a.lay.toml --json");
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
  const auto document = nlohmann::json::parse(ran.out);
  CHECK(document.at("format") == "lay-build 1");
  CHECK(document.at("plan").at("file") == "a.lay.toml");
  CHECK(document.at("totals").at("turns").get<double>() == Approx(60.0).epsilon(1e-9));
}

TEST_CASE("lay --out writes the whole set, and what is written says the same as what is printed") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run("$LW lay a.lay.toml --json --out reports/deep --seed 3 --angle 90");
  CHECK(ran.code == 0);
  for (const char* name : report_files) {
    CAPTURE(name);
    CHECK(fs::file_size(shop.at("reports/deep") / name) > 0);
  }
  CHECK(entries(shop.at("reports/deep")) == std::ssize(report_files));
  CHECK(content(shop.at("reports/deep/build.json")) == ran.out);
  CHECK(nlohmann::json::parse(ran.out).at("totals").at("seed") == 3);

  const Ran text = shop.run("$LW lay a.lay.toml --out reports/deep");
  CHECK(text.code == 0);
  CHECK_THAT(text.out, Contains("Written into reports/deep"));
}

TEST_CASE("the same plan and seed give the same files") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  REQUIRE(shop.run("$LW lay a.lay.toml --out one && $LW lay a.lay.toml --out two").code == 0);
  for (const char* name : report_files) {
    CAPTURE(name);
    CHECK(content(shop.at("one") / name) == content(shop.at("two") / name));
  }
}

TEST_CASE("a plan that is not sound is 1, and nothing is written") {
  const Workshop shop;
  shop.write("bad.lay.toml", "format = \"lay-plan 1\"\n");
  const Ran ran = shop.run("$LW lay bad.lay.toml --json --out reports");
  CHECK(ran.code == 1);
  CHECK(ran.out.empty());
  CHECK_THAT(ran.err, Contains("bad.lay.toml"));
  CHECK_FALSE(fs::exists(shop.at("reports")));
  CHECK(shop.run("$LW lay nowhere.lay.toml").code == 1);
}

TEST_CASE("what cannot be written is 3, and no file is replaced") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  shop.write("file", "mine");
  const Ran into_file = shop.run("$LW lay a.lay.toml --out file/reports");
  CHECK(into_file.code == 3);
  CHECK(into_file.out.empty());
  CHECK_THAT(into_file.err, Contains("file"));
  CHECK(content(shop.at("file")) == "mine");

  fs::create_directories(shop.at("reports/section.svg"));
  shop.write("reports/summary.txt", "old");
  const Ran blocked = shop.run("$LW lay a.lay.toml --out reports");
  CHECK(blocked.code == 3);
  CHECK_THAT(blocked.err, Contains("section.svg"));
  CHECK(content(shop.at("reports/summary.txt")) == "old");
  CHECK(entries(shop.at("reports")) == 2);

  const Ran full = shop.run("$LW lay a.lay.toml >/dev/full");
  CHECK(full.code == 3);
  CHECK_THAT(full.err, Contains("standard output"));
}

TEST_CASE("Ctrl-C is 130, before the wind is laid, and leaves nothing behind") {
  const Workshop shop;
  shop.write("long.lay.toml", small_plan(200'000));
  fs::create_directory(shop.at("old"));
  shop.write("old/summary.txt", "old");
  for (const char* folder : {"new/deep", "old"}) {
    CAPTURE(folder);
    const Ran ran = shop.stopped("lay long.lay.toml --out " + std::string(folder));
    CHECK(ran.code == 130);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains("nothing was written"));
  }
  CHECK_FALSE(fs::exists(shop.at("new")));
  CHECK(content(shop.at("old/summary.txt")) == "old");
  CHECK(entries(shop.at("old")) == 1);
}
