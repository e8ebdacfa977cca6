#include "desk/issue_words.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "plan/sample_plan.h"

using namespace laywright;

namespace {

// What the form says of the first mistake of a plan with `from` replaced.
struct Said {
  std::vector<std::string> words;

  [[nodiscard]] bool has(const std::string& sentence) const {
    for (const std::string& w : words) UNSCOPED_INFO(w);
    return std::find(words.begin(), words.end(), sentence) != words.end();
  }

  Said(const std::string& from, const std::string& to, Units units = Units::metric) {
    std::string text(sample::full);
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
    const PlanState state = state_from_text(text, "a.lay.toml").value();
    const Issues issues = issues_in(state);
    const auto rows = field_rows(state, issues, units);
    for (const Issue& issue : issues) words.push_back(issue_words(issue, rows));
  }
};

}  // namespace

TEST_CASE("what is wrong is told by the field's name, not by the key of the file") {
  CHECK(Said("pitch = \"0.26 mm\"", "pitch = \"0 mm\"")
            .has("Pitch is out of range (allowed: above 0 mm, up to 10000 mm)"));
  CHECK(Said("pitch = \"0.26 mm\"\n", "").has("Pitch is needed"));
  CHECK(Said("flange_diameter = \"236 mm\"", "flange_diameter = \"100 mm\"")
            .has("Flange diameter: the flange must be larger than the barrel, 150 mm"));
  CHECK(Said("pitch = \"0.28 mm\"", "pitch = \"0 mm\"")
            .has("Step 2, pitch is out of range (allowed: above 0 mm, up to 10000 mm)"));
}

TEST_CASE("the allowed range is told in the unit in which the value is shown") {
  CHECK(Said("pitch = \"0.26 mm\"", "pitch = \"0 mm\"", Units::inch)
            .has("Pitch is out of range (allowed: above 0 in, up to 393.701 in)"));  // 10 m over 25.4 mm
}

TEST_CASE("other keys that a sentence names become names, too") {
  CHECK(Said("core_diameter = \"0.125 mm\"\n", "")
            .has("Modulus is not used; stiffness and strain need core diameter too"));
}

TEST_CASE("a table that is missing is told by what it lacks") {
  const std::string text(sample::full);
  const std::size_t from = text.find("[fiber]"), to = text.find("[traverse]");
  CHECK(Said(text.substr(from, to - from), "").has("Fiber is not filled in: fiber diameter, friction"));
}

TEST_CASE("a number without a unit in the file says what to type") {
  CHECK(Said("pitch = \"0.26 mm\"", "pitch = \"0.26\"")
            .has("Pitch has no unit in the file; type it again, alone for mm or with its unit"));
}

TEST_CASE("keys that are no part of a plan are told as of the file") {
  const Said said("[spool]\n", "[spool]\nsmell = 3\n");
  REQUIRE(said.words.size() == 1);
  CHECK(said.words.front().starts_with("In the file, spool.smell is not a key of a lay plan"));
}
