// One verdict, in every place where it is told.
#include <algorithm>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// As one line of words, since each place breaks lines where it has to.
std::string words_of(const std::string& text) {
  std::istringstream stream(text);
  std::string words;
  for (std::string word; stream >> word;) words += (words.empty() ? "" : " ") + word;
  return words;
}

}  // namespace

TEST_CASE("text, document, summary and sheet tell the same verdict") {
  const Workshop shop;
  for (const char* pitch : {"0.26 mm", "0.5 mm"}) {
    std::string plan = small_plan();
    const std::string key = "pitch = ";
    const std::size_t at = plan.find(key);
    REQUIRE(at != std::string::npos);
    plan.replace(at, plan.find('\n', at) - at, key + '"' + pitch + '"');
    shop.write("a.lay.toml", plan);
    const Ran json = shop.run("$LW lay a.lay.toml --json");
    REQUIRE(json.code == 0);
    const auto verdict = nlohmann::json::parse(json.out).at("verdict");
    const std::string line = verdict.at("line");
    INFO(line);
    CHECK(verdict.at("first").is_null() == (verdict.at("grade") == "good"));
    CHECK_THAT(words_of(shop.run("$LW lay a.lay.toml --out out").out), Contains(line));
    CHECK_THAT(words_of(content(shop.at("out/summary.txt"))), Contains(line));
    CHECK(shop.run("$LW sheet a.lay.toml -o a.pdf && pdftotext -layout a.pdf a.txt").code == 0);
    CHECK_THAT(words_of(content(shop.at("a.txt"))), Contains(line));
  }
}

TEST_CASE("over draws, text, document and sheet tell one verdict, the worst, and how many draws are better") {
  const Workshop shop;
  std::string plan = small_plan();
  const std::string friction = "[traverse]\n";
  REQUIRE(plan.find(friction) != std::string::npos);
  plan.replace(plan.find(friction), friction.size(), "[traverse]\nguide_play = \"0.2 mm\"\n");
  shop.write("a.lay.toml", plan);
  CHECK_THAT(words_of(shop.run("$LW lay a.lay.toml --draws 1").out),
             Contains("(this draw)") && Contains("without --draws 1 it is the worst of 5"));
  const Ran unasked = shop.run("$LW lay a.lay.toml --json");
  CHECK(nlohmann::json::parse(unasked.out).at("verdict").at("draws").size() == 5);
  const Ran json = shop.run("$LW lay a.lay.toml --draws 4 --json");
  REQUIRE(json.code == 0);
  const auto verdict = nlohmann::json::parse(json.out).at("verdict");
  const auto& draws = verdict.at("draws");
  REQUIRE(draws.size() == 4);
  const std::vector<std::string> grades{"good", "marginal", "do not wind"};
  std::ptrdiff_t worst = 0;
  for (std::size_t i = 0; i < draws.size(); ++i) {
    CHECK(draws[i].at("seed") == i + 1);
    const Ran alone = shop.run("$LW lay a.lay.toml --draws 1 --json --seed " + std::to_string(i + 1));
    if (i == 0) CHECK(nlohmann::json::parse(alone.out).at("verdict").at("grade") == draws[0].at("grade"));
    worst = std::max(worst, std::find(grades.begin(), grades.end(), draws[i].at("grade")) - grades.begin());
  }
  CHECK(verdict.at("grade") == grades.at(static_cast<std::size_t>(worst)));
  const std::string line = verdict.at("line");
  CHECK_THAT(line, Contains("of 4 draws"));
  const std::string text = words_of(shop.run("$LW lay a.lay.toml --draws 4 --out out").out);
  CHECK_THAT(text, Contains(line) && !Contains("--draws 1"));
  CHECK_THAT(words_of(content(shop.at("out/summary.txt"))), Contains(line));
  CHECK(nlohmann::json::parse(content(shop.at("out/build.json"))).at("verdict").at("line") == line);
  CHECK(shop.run("$LW sheet a.lay.toml --draws 4 -o a.pdf && pdftotext -layout a.pdf a.txt").code == 0);
  CHECK_THAT(words_of(content(shop.at("a.txt"))), Contains(line));
  CHECK(shop.run("$LW lay a.lay.toml --draws 0").code == 2);
}
