// One verdict, in every place where it is told.
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
