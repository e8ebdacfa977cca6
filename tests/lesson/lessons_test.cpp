// Every lesson that ships, laid and held against what it says.
#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <filesystem>
#include <memory>

#include "lay/lay.h"
#include "lesson/claims.h"
#include "lesson/lesson.h"
#include "lesson/pitch_ruler.h"
#include "lesson/slide.h"
#include "measure/acceptance.h"
#include "payoff/payoff.h"
#include "plan/fields.h"
#include "plan/plan_file.h"
#include "plan/plan_text.h"
#include "plan/plan_values.h"

using namespace laywright;

namespace {

struct Laid {
  Plan plan;
  Build build;
  Measurements measurements;
  std::vector<float> drawn_off;  // where it is asked for
};

std::unique_ptr<Laid> laid(Result<Plan> plan, bool draws_off) {
  REQUIRE(plan.ok());
  Progress progress;
  Result<Build> build = lay(plan.value(), {}, progress);
  REQUIRE(build.ok());
  Measurements measurements = measure(plan.value(), build.value(), progress);
  auto made =
      std::make_unique<Laid>(Laid{std::move(plan).value(), std::move(build).value(), std::move(measurements), {}});
  PayoffSettings over_end;
  over_end.way = DrawOff::over_left;
  over_end.each_node = true;
  if (draws_off) made->drawn_off = pay_off(made->plan, made->build, over_end, progress).multiples;
  return made;
}

std::unique_ptr<Laid> laid(const std::string& text, bool draws_off) {
  return laid(plan_from_text(text, "lesson"), draws_off);
}

LaidBuild view_of(const Laid& laid) {
  return {&laid.build, &laid.measurements, laid.drawn_off.empty() ? nullptr : &laid.drawn_off,
          acceptance_of(laid.plan).payoff_force};
}

// Further to the goal: what a claim has above, or below.
bool is_nearer(const Claim& goal, double value, double before) {
  return goal.is == Relation::above ? value > before : value < before;
}

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
  REQUIRE(lessons.value().size() == 10);
  for (std::size_t k = 0; k < lessons.value().size(); ++k)
    CHECK(lessons.value()[k].number == static_cast<int>(k) + 1);
}

TEST_CASE("the model bears out every claim of every lesson", "[lessons]") {
  const Result<std::vector<Lesson>> lessons = load_lessons(folder);
  REQUIRE(lessons.ok());
  for (const Lesson& lesson : lessons.value()) {
    INFO(lesson.file);
    const std::unique_ptr<Laid> first = laid(lesson.builds[0].plan_text, lesson.draws_off());
    const std::unique_ptr<Laid> second = laid(lesson.builds[1].plan_text, lesson.draws_off());
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
        CHECK(figure_of(figure, pair[0]).has_value());
        CHECK(figure_of(figure, pair[1]).has_value());
      }
      const auto finds = [&](Which in, FindingKind kind, std::optional<Side> side) {
        const auto& findings = (in == Which::first ? *first : *second).measurements.findings;
        INFO("points at " << name_of(kind));
        CHECK(std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) {
          return finding.kind == kind && (!side || finding.side == side);
        }));
      };
      if (step.point && step.point->finding) finds(step.point->in, *step.point->finding, step.point->side);
      if (step.play && step.play->until) finds(step.play->until->in, step.play->until->kind, step.play->until->side);
      if (lesson.look && lesson.look->finding)
        finds(lesson.look->finding->in, lesson.look->finding->kind, lesson.look->finding->side);
      if (!step.attempt) continue;
      // What is to be reached by trying is not there yet, and the solution reaches it.
      CHECK_FALSE(judge(step.attempt->goal, pair).holds);
      LaidPair tried = pair;
      const auto which = static_cast<std::size_t>(step.attempt->in);
      const std::unique_ptr<Laid> solved = laid(
          with_value(lesson.builds[which].plan_text, step.attempt->key, step.attempt->solution), lesson.draws_off());
      tried[which] = view_of(*solved);
      const Verdict verdict = judge(step.attempt->goal, tried);
      INFO(verdict.text);
      CHECK(verdict.holds);

      // A first step the right way helps; a choice has one step alone.
      const PlanDraft& given = pair[which].build == &first->build ? first->plan.draft() : second->plan.draft();
      const Field<PlanDraft>& field =
          *std::find_if(plan_fields().begin(), plan_fields().end(),
                        [&](const Field<PlanDraft>& each) { return each.path() == step.attempt->key; });
      if (field.kind == FieldKind::choice) continue;
      const double from = *value_at(given, step.attempt->key),
                   to = *value_at(solved->plan.draft(), step.attempt->key);
      const Slide slide = slide_between(from, to, field.range.low, field.range.high);
      PlanDraft draft = given;
      set_value(draft, step.attempt->key, stepped(slide, from, to > from ? 1.0 : -1.0));
      const std::unique_ptr<Laid> moved = laid(check(draft), lesson.draws_off());
      const std::string& figure = step.attempt->figure;
      const double before = *figure_of(figure, pair[which]), after = *figure_of(figure, view_of(*moved));
      INFO(figure << " from " << before << " to " << after);
      CHECK(is_nearer(step.attempt->goal, after, before));
      CHECK((to > from ? slide.high > to : slide.low < to || slide.low <= field.range.low));
    }
    CHECK(claims >= 2);
  }
}

TEST_CASE("the ruler holds the turns of a layer against the fiber", "[lessons]") {
  const Result<std::vector<Lesson>> lessons = load_lessons(folder);
  const Lesson& pitch = lessons.value().front();
  const auto ruler = [&](std::size_t k) {
    return ruler_of(plan_from_text(pitch.builds[k].plan_text, "lesson").value());
  };
  // 95 mm between the flanges, stops at 0.1 mm: 94.8 mm; by hand.
  const PitchRuler wide = ruler(0), narrow = ruler(1);
  CHECK(wide.turns == 370);    // 94.8 / 0.256
  CHECK(narrow.turns == 403);  // 94.8 / 0.235
  CHECK(wide.spare_mm() == Approx(370 * 0.011));
  CHECK(narrow.spare_mm() == Approx(-403 * 0.010));
  CHECK(ruler_words(narrow) ==
        "In one layer 403 turns need 98.7 mm, the guide gives them 94.7 mm: 4.0 mm too little.");
  CHECK(ruler_words(wide, true) ==
        "In one layer 370 turns need 3.569 in, the guide gives them 3.729 in: 0.160 in to spare.");
}
