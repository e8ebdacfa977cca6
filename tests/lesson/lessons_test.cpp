// Every lesson that ships, laid and held against what it says.
#include <catch2/catch.hpp>

#include <array>
#include <filesystem>
#include <memory>

#include "lay/lay.h"
#include "lesson/claims.h"
#include "lesson/lesson.h"
#include "plan/plan_file.h"
#include "plan/plan_text.h"

using namespace laywright;

namespace {

struct Laid {
  Plan plan;
  Build build;
  Measurements measurements;
};

std::unique_ptr<Laid> laid(const std::string& text) {
  Result<Plan> plan = plan_from_text(text, "lesson");
  REQUIRE(plan.ok());
  Progress progress;
  Result<Build> build = lay(plan.value(), {}, progress);
  REQUIRE(build.ok());
  Measurements measurements = measure(plan.value(), build.value(), progress);
  return std::make_unique<Laid>(Laid{std::move(plan).value(), std::move(build).value(), std::move(measurements)});
}

LaidBuild view_of(const Laid& laid) { return {&laid.build, &laid.measurements}; }

std::string with_value(const std::string& plan, const std::string& path, const std::string& value) {
  PlanText text(plan);
  const std::size_t dot = path.rfind('.');
  const bool number = value.find_first_not_of("0123456789.-") == std::string::npos;
  text.set(path.substr(0, dot), path.substr(dot + 1), number ? value : toml_text(value));
  return text.text();
}

const std::filesystem::path folder = std::filesystem::path(LAYWRIGHT_SOURCE_DIR) / "samples" / "lessons";

}  // namespace

TEST_CASE("every lesson that ships can be read, and they are numbered from 1", "[lessons]") {
  const Result<std::vector<Lesson>> lessons = load_lessons(folder);
  for (const Issue& issue : lessons.issues()) FAIL_CHECK(to_text(issue));
  REQUIRE(lessons.value().size() == 8);
  for (std::size_t k = 0; k < lessons.value().size(); ++k)
    CHECK(lessons.value()[k].number == static_cast<int>(k) + 1);
}

TEST_CASE("the model bears out every claim of every lesson", "[lessons]") {
  const Result<std::vector<Lesson>> lessons = load_lessons(folder);
  REQUIRE(lessons.ok());
  for (const Lesson& lesson : lessons.value()) {
    INFO(lesson.file);
    const std::unique_ptr<Laid> first = laid(lesson.builds[0].plan_text);
    const std::unique_ptr<Laid> second = laid(lesson.builds[1].plan_text);
    const LaidPair pair{view_of(*first), view_of(*second)};
    std::size_t claims = 0;
    for (const LessonStep& step : lesson.steps) {
      CHECK(with_figures(step.say, pair).find("...") == std::string::npos);
      if (step.question) CHECK(with_figures(step.question->because, pair).find("...") == std::string::npos);
      // A question stands on something that was laid, and so does a lesson.
      if (step.question) CHECK_FALSE(step.claims.empty());
      for (const Claim& claim : step.claims) {
        const Verdict verdict = judge(claim, pair);
        INFO(lesson.file << ":" << claim.line << ": " << verdict.text);
        CHECK(verdict.holds);
        ++claims;
      }
      for (const std::string& figure : step.figures) {
        CHECK(figure_of(figure, first->build, first->measurements).has_value());
        CHECK(figure_of(figure, second->build, second->measurements).has_value());
      }
      if (step.point && step.point->finding) {
        const Laid& there = step.point->in == Which::first ? *first : *second;
        bool found = false;
        for (const Finding& finding : there.measurements.findings) {
          found = found ||
                  (finding.kind == *step.point->finding && (!step.point->side || finding.side == step.point->side));
        }
        INFO("points at " << name_of(*step.point->finding));
        CHECK(found);
      }
      if (!step.attempt) continue;
      // What is to be reached by trying is not there yet, and the solution reaches it.
      CHECK_FALSE(judge(step.attempt->goal, pair).holds);
      LaidPair tried = pair;
      const auto which = static_cast<std::size_t>(step.attempt->in);
      const std::unique_ptr<Laid> solved =
          laid(with_value(lesson.builds[which].plan_text, step.attempt->key, step.attempt->solution));
      tried[which] = view_of(*solved);
      const Verdict verdict = judge(step.attempt->goal, tried);
      INFO(verdict.text);
      CHECK(verdict.holds);
    }
    CHECK(claims >= 2);
  }
}
