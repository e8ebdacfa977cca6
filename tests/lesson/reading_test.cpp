// What a lesson's file may say, and what is said about one that is wrong. Invented lessons, for demonstration.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

#include "failing_folders.h"
#include "lesson/claims.h"
#include "lesson/lesson.h"
#include "temporary_folder.h"

using namespace laywright;

namespace {

const std::filesystem::path samples = std::filesystem::path(LAYWRIGHT_SOURCE_DIR) / "samples";

std::string head() {
  return "format = \"lesson 1\"\nnumber = 1\ntitle = \"T\"\naim = \"A\"\n[first]\nname = \"F\"\nplan = \"" +
         (samples / "parallel.lay.toml").string() + "\"\n[second]\nname = \"S\"\nplan = \"" +
         (samples / "parallel.lay.toml").string() + "\"\n";
}

Result<Lesson> lesson_of(const std::string& text) {
  const testing::TemporaryFolder folder;
  return load_lesson(folder.file("test.lesson.toml", text));
}

// The first issue's key, and its sentence.
std::string trouble(const std::string& steps) {
  const Result<Lesson> lesson = lesson_of(head() + steps);
  REQUIRE_FALSE(lesson.ok());
  const Issue& issue = lesson.issues().front();
  CHECK(issue.line > 0);
  return issue.key + ": " + issue.what;
}

}  // namespace

TEST_CASE("a lesson sets values in the plans that it takes") {
  const std::string set = "set = { \"fiber.friction\" = \"held\", \"wind.turns\" = 40 }\n";
  const Result<Lesson> lesson = lesson_of(head() + set + "[[step]]\nsay = \"So.\"\n");
  REQUIRE(lesson.ok());
  CHECK(lesson.value().build(Which::first).plan_text.find("friction = 0.5") != std::string::npos);
  CHECK(lesson.value().build(Which::second).plan_text.find("friction = \"held\"") != std::string::npos);
  CHECK(lesson.value().build(Which::second).plan_text.find("turns = 40") != std::string::npos);
}

TEST_CASE("what is wrong in a lesson is named with its key") {
  CHECK(trouble("[[step]]\nsay = \"It is {second.color}.\"\n").find("step[1].say: names a figure") == 0);
  CHECK(trouble("[[step]]\nsya = \"So.\"\nsay = \"So.\"\n").find("did you mean say?") != std::string::npos);
  CHECK(trouble("[[step]]\ncut = true\n").find("step[1].say: is missing") == 0);
  CHECK(trouble("[[step]]\nask = \"What?\"\nanswers = [\"a\", \"b\"]\nright = 3\nbecause = \"So.\"\n")
            .find("step[1].right") == 0);
  CHECK(trouble("[[step]]\nsay = \"So.\"\nclaims = [{ of = \"first\", figure = \"fill\", is = \"above\" }]\n")
            .find("step[1].claims[1].value: must be there") == 0);
  CHECK(trouble("[[step]]\nsay = \"So.\"\nclaims = [{ of = \"first\", figure = \"outer.left\", is = \"above\", "
                "value = 3 }]\n")
            .find("step[1].claims[1].value") == 0);
  CHECK(trouble("").find("step: is missing") == 0);
  CHECK(lesson_of("format = \"lesson 2\"\n").issues().front().what.find("lesson 1") != std::string::npos);
  CHECK_FALSE(load_lesson(samples / "no-such.lesson.toml").ok());
}

TEST_CASE("a lesson's title is no longer than a plan's may be") {
  const auto titled = [](std::size_t length) {
    std::string text = head() + "[[step]]\nsay = \"So.\"\n";
    return lesson_of(text.replace(text.find("\"T\""), 3, '"' + std::string(length, 'T') + '"'));
  };
  CHECK(titled(longest_title).ok());
  const Result<Lesson> too_long = titled(longest_title + 1);
  REQUIRE_FALSE(too_long.ok());
  CHECK(too_long.issues().front().key == "title");
  CHECK(too_long.issues().front().allowed == "up to 100 characters");
}

TEST_CASE("a plan that a lesson makes unsound is the lesson's fault") {
  const std::string set = "set = { \"traverse.pitch\" = \"-1 mm\" }\n";
  const Result<Lesson> lesson = lesson_of(head() + set + "[[step]]\nsay = \"So.\"\n");
  REQUIRE_FALSE(lesson.ok());
  CHECK(lesson.issues().front().key == "traverse.pitch");
}

TEST_CASE("figures are written with their units, in both systems") {
  const auto text = [](const char* name, double value, bool inch = false) {
    return figure_text(figure_kind(name).value(), value, inch);
  };
  CHECK(text("outer.left", 154.106) == "154.11 mm");
  CHECK(text("outer.left", 25.4, true) == "1.0000 in");
  CHECK(text("gap_length", 12'345.0) == "12.3 m");
  CHECK(text("gap_length", 3048.0, true) == "10.0 ft");
  CHECK(text("fill", 0.8301) == "83.0 %");
  CHECK(text("layer2.turns", 372.24) == "372.2 turns");
  CHECK(text("ride_up.places", 20.0) == "20");
  CHECK_FALSE(figure_kind("layer0.turns").has_value());
  CHECK_FALSE(figure_kind("layer2").has_value());
  CHECK_FALSE(figure_kind("gap.colour").has_value());
  CHECK(with_figures("It is {first.fill}.", {}) == "It is ....");
}

TEST_CASE("a folder of lessons that cannot be read is a warning, and no end") {
  const testing::TemporaryFolder folder;
  folder.file("1.lesson.toml", "");
  folder.file("2.lesson.toml", "");
  for (int entries = 0; entries < 4; ++entries) {
    CAPTURE(entries);
    const testing::FailingFolders failing(entries);
    const Result<std::vector<Lesson>> lessons = load_lessons(folder.path());
    REQUIRE(lessons.ok());
    CHECK(lessons.value().empty());
    REQUIRE_FALSE(lessons.issues().empty());
    CHECK(lessons.issues().back().severity == Severity::warning);
    CHECK(lessons.issues().back().file == folder.path().string());
    CHECK(lessons.issues().back().what.find("cannot be read") == 0);
  }
  // One that is not there has none.
  const Result<std::vector<Lesson>> none = load_lessons(folder.path() / "none");
  CHECK(none.ok());
  CHECK(none.issues().empty());
}
