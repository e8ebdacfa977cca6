// Advice in the workbench: answers are those of advise's own functions, belong to the plan they were made of, and are
// followed by one edit.
#include "bench_for_tests.h"

#include <algorithm>

#include "session/advice.h"
#include "session/study_request.h"
#include "verdict/verdict_words.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// The right stop stands 3 mm in: fiber of 1 mm leaves a gap at that flange.
std::string flawed_plan() {
  std::string text = small_plan;
  const std::string key = "right_stop = \"0.5 mm\"";
  return text.replace(text.find(key), key.size(), "right_stop = \"3 mm\"");
}

struct Asker : LaidBench {
  using LaidBench::LaidBench;
  [[nodiscard]] const Advice& advice() const { return *bench.active()->advice; }
  [[nodiscard]] double value(const char* path) const { return *value_at(document(bench).state().draft, path); }
  void wait(AdviceKind kind) {
    REQUIRE(wait_until(
        bench, [&] { return !advice().status(kind).busy; }, 200.0));
    INFO(advice().status(kind).trouble);
    REQUIRE(advice().basis(kind) != nullptr);
  }
  void choose(FindingKind kind) {
    const auto& findings = bench.wound()->measurements().findings;
    const auto found =
        std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.kind == kind; });
    REQUIRE(found != findings.end());
    REQUIRE(bench.apply(cmd::choose_finding(static_cast<std::size_t>(found - findings.begin()))));
  }
  void explain_gap() {
    choose(FindingKind::flange_gap);
    REQUIRE(bench.apply(cmd::explain_finding()));
    wait(AdviceKind::cause);
  }
};

StudyRequest stops_5x5() {
  return {{{"traverse.left_stop", "0.1", "0.9", 5}, {"traverse.right_stop", "0.1 mm", "0.9 mm", 5}}, true};
}

std::string last_notice(const Workbench& bench) {
  return bench.notices().empty() ? "" : bench.notices().back().text;
}

}  // namespace

TEST_CASE("why a finding is there: the answer of advise, word for word") {
  Asker asker(flawed_plan());
  asker.explain_gap();
  const CauseAnswer& answer = *asker.advice().cause();
  const Wound& wound = *asker.bench.wound();
  Progress progress;
  const auto direct = explain(wound.plan(), wound.build(), wound.measurements(),
                              wound.measurements().findings[answer.finding], CauseSettings{}, progress);
  REQUIRE(direct.ok());
  CHECK(answer.explanation.text == direct.value().text);
  REQUIRE(answer.explanation.remedies.size() == direct.value().remedies.size());
  REQUIRE_FALSE(answer.explanation.remedies.empty());
  CHECK(answer.explanation.remedies.front().text == direct.value().remedies.front().text);
  // Known beforehand: the plan differs from a sound one in this stop alone.
  CHECK(answer.explanation.remedies.front().changes.front().path == "traverse.right_stop");
  CHECK_FALSE(asker.bench.standing(AdviceKind::cause)->stale);
}

TEST_CASE("a remedy is one edit, undo takes it back, another one takes its place") {
  Asker asker(flawed_plan());
  Workbench& bench = asker.bench;
  asker.explain_gap();
  const CauseAnswer& answer = *asker.advice().cause();
  REQUIRE(bench.apply(cmd::set_advised(AdviceKind::cause, 0)));
  CHECK(asker.value("traverse.right_stop") ==
        Approx(answer.explanation.remedies.front().changes.front().value).epsilon(1e-8));
  CHECK(bench.standing(AdviceKind::cause)->set == 0);
  CHECK_FALSE(bench.apply(cmd::set_advised(AdviceKind::cause, 0)));
  CHECK(last_notice(bench) == "The plan is set so already.");
  CHECK(document(bench).history().undo_name() == "remedy 1");
  wait_for_build(bench);
  const auto& findings = bench.wound()->measurements().findings;
  const auto places = [](const std::vector<Finding>& all) {
    double sum = 0.0;
    for (const Finding& f : all)
      sum += f.kind == FindingKind::flange_gap && f.side == Side::right ? f.occurrences : 0;
    return sum;
  };
  // Places of the one build against the mean over draws that the remedy was weighed by: one may be left.
  CHECK(places(findings) <= 0.5 * answer.explanation.before.places);

  REQUIRE(bench.apply(cmd::undo()));
  CHECK(asker.value("traverse.right_stop") == 3.0);
  CHECK_FALSE(document(bench).history().can_undo());
  CHECK_FALSE(bench.standing(AdviceKind::cause)->set);
  CHECK_FALSE(bench.standing(AdviceKind::cause)->stale);
  if (answer.options.size() > 1) {
    REQUIRE(bench.apply(cmd::set_advised(AdviceKind::cause, 0)));
    REQUIRE(bench.apply(cmd::set_advised(AdviceKind::cause, 1)));
    CHECK(same_wind(answer.options[1], document(bench).state().draft));
  }
}

TEST_CASE("a remedy beside the build as it was") {
  Asker asker(flawed_plan());
  Workbench& bench = asker.bench;
  asker.explain_gap();
  const WoundPtr before = bench.wound();
  REQUIRE(bench.apply(cmd::set_advised(AdviceKind::cause, 0, true)));
  CHECK(bench.other_wound() == before);
  wait_for_build(bench);
  const auto difference = bench.difference();
  REQUIRE(difference);
  REQUIRE_FALSE(difference->settings.empty());
  CHECK(difference->settings.front().name == "Traverse: right stop");
}

TEST_CASE("an answer belongs to its plan: changed otherwise it is told, and not followed") {
  Asker asker(flawed_plan());
  Workbench& bench = asker.bench;
  asker.explain_gap();
  REQUIRE(bench.apply(cmd::set_title("Another name", 0)));
  CHECK_FALSE(bench.standing(AdviceKind::cause)->stale);  // that lays nothing else
  REQUIRE(bench.apply(cmd::set_field("traverse.pitch", 1.05)));
  CHECK(bench.standing(AdviceKind::cause)->stale);
  CHECK_FALSE(bench.apply(cmd::set_advised(AdviceKind::cause, 0)));
  CHECK(last_notice(bench).find("changed since") != std::string::npos);
  CHECK(asker.value("traverse.right_stop") == 3.0);
  REQUIRE(bench.apply(cmd::undo()));
  CHECK_FALSE(bench.standing(AdviceKind::cause)->stale);
  REQUIRE(bench.apply(cmd::set_seed(7)));
  CHECK(bench.standing(AdviceKind::cause)->stale);
  REQUIRE(bench.apply(cmd::forget_advice(AdviceKind::cause)));
  CHECK_FALSE(bench.standing(AdviceKind::cause));
  CHECK_FALSE(bench.apply(cmd::forget_advice(AdviceKind::cause)));
}

TEST_CASE("what cannot be asked says what to do") {
  Asker asker(flawed_plan());
  Workbench& bench = asker.bench;
  CHECK(bench.why_not(cmd::explain_finding()).find("click one") != std::string::npos);
  asker.choose(FindingKind::flange_gap);
  CHECK(bench.why_not(cmd::explain_finding()).empty());
  REQUIRE(bench.apply(cmd::set_field("traverse.pitch", 1.03)));
  CHECK_FALSE(bench.why_not(cmd::explain_finding()).empty());
  wait_for_build(bench);
  REQUIRE(bench.apply(cmd::type_field("traverse.pitch", "fast", 0)));
  CHECK_FALSE(bench.why_not(cmd::explain_finding()).empty());
  CHECK_FALSE(bench.why_not(cmd::search_better()).empty());
  CHECK_FALSE(bench.why_not(cmd::run_study(stops_5x5())).empty());
  CHECK_FALSE(bench.why_not(cmd::set_advised(AdviceKind::better, 0)).empty());
  CHECK_FALSE(bench.why_not(cmd::stop_advice(AdviceKind::better)).empty());
}

TEST_CASE("a search is stopped at once, by its own command and by Escape's, what was there stays") {
  Asker asker(contents(sample("even")));
  Workbench& bench = asker.bench;
  const AdviceKind kind = GENERATE(AdviceKind::better, AdviceKind::study);
  const bool by_escape = GENERATE(false, true);
  const Command start =
      kind == AdviceKind::better ? Command(cmd::search_better()) : Command(cmd::run_study(stops_5x5()));
  REQUIRE(bench.apply(start));
  CHECK(asker.advice().status(kind).busy);
  CHECK(bench.seconds_to_next_poll() <= 0.1);
  REQUIRE(bench.apply(by_escape ? Command(cmd::stop_laying()) : Command(cmd::stop_advice(kind))));
  CHECK_FALSE(asker.advice().status(kind).busy);
  CHECK(asker.advice().status(kind).stopped);
  CHECK(asker.advice().basis(kind) == nullptr);
  bench.poll();
  CHECK(asker.advice().status(kind).trouble.empty());
}

TEST_CASE("better settings: those of advise, a proposal is one edit") {
  Asker asker(flawed_plan());
  Workbench& bench = asker.bench;
  REQUIRE(bench.apply(cmd::search_better({{"traverse.reversal.turns"}, false})));
  asker.wait(AdviceKind::better);
  CHECK(last_notice(bench).find("Ctrl+B") != std::string::npos);
  const BetterAnswer& answer = *asker.advice().better();
  ImproveSettings settings;
  settings.requests = {{"traverse.reversal.turns", {}, {}, {}, true}};
  Progress progress;
  const auto direct = improve(bench.wound()->plan(), settings, progress);
  REQUIRE(direct.ok());
  CHECK(answer.improvement.text == direct.value().text);
  REQUIRE(answer.improvement.best.size() == direct.value().best.size());
  REQUIRE_FALSE(answer.improvement.best.empty());
  CHECK(answer.improvement.best.front().values == direct.value().best.front().values);

  REQUIRE(bench.apply(cmd::set_advised(AdviceKind::better, 0)));
  for (std::size_t i = 0; i < answer.improvement.searchables.size(); ++i) {
    CHECK(asker.value(answer.improvement.searchables[i].path.c_str()) ==
          Approx(answer.improvement.best.front().values[i]).margin(1e-9));
  }
  REQUIRE(bench.apply(cmd::undo()));
  CHECK(same_wind(answer.of.plan.draft(), document(bench).state().draft));
  CHECK_FALSE(document(bench).history().can_undo());
}

TEST_CASE("a study: a click sets the plan to that build's settings, and the build has the figures of the map") {
  Asker asker(small_plan);
  Workbench& bench = asker.bench;
  REQUIRE(bench.apply(cmd::run_study(stops_5x5())));
  asker.wait(AdviceKind::study);
  const Study& study = asker.advice().study()->study;
  REQUIRE(study.rows.size() == 25);
  for (const std::size_t row : {std::size_t{3}, std::size_t{19}}) {
    REQUIRE(bench.apply(cmd::set_advised(AdviceKind::study, row)));
    CHECK(bench.standing(AdviceKind::study)->set == row);
    CHECK(asker.value("traverse.left_stop") == Approx(study.rows[row].values[0]).epsilon(1e-8));
    CHECK(asker.value("traverse.right_stop") == Approx(study.rows[row].values[1]).epsilon(1e-8));
    CHECK(*place_in(study, document(bench).state().draft) ==
          std::vector{asker.value("traverse.left_stop"), asker.value("traverse.right_stop")});
    wait_for_build(bench);
    CHECK(bench.wound()->measurements().outer_diameter.greatest_mm ==
          Approx(study.rows[row].figures[Study::figure("outer_diameter_greatest_mm")]).epsilon(1e-6));
    CHECK(bench.wound()->measurements().fill_factor ==
          Approx(study.rows[row].figures[Study::figure("fill_factor")]).epsilon(1e-6));
  }
  // Elsewhere on the axes the map still holds; with another pitch it does not.
  REQUIRE(bench.apply(cmd::set_field("traverse.left_stop", 0.123)));
  CHECK_FALSE(bench.standing(AdviceKind::study)->stale);
  CHECK_FALSE(bench.standing(AdviceKind::study)->set);
  REQUIRE(bench.apply(cmd::set_field("traverse.pitch", 1.1)));
  CHECK(bench.standing(AdviceKind::study)->stale);
  CHECK_FALSE(bench.apply(cmd::set_advised(AdviceKind::study, 0)));
}

TEST_CASE("values that advice sets are as a person would write them") {
  Asker asker(small_plan);
  REQUIRE(asker.bench.apply(cmd::run_study({{{"traverse.left_stop", "0.1", "0.8", 8}}, false})));
  asker.wait(AdviceKind::study);
  for (const auto& [row, text] : {std::pair<std::size_t, const char*>{2, "0.3"}, {5, "0.6"}, {6, "0.7"}}) {
    REQUIRE(asker.bench.apply(cmd::set_advised(AdviceKind::study, row)));
    const auto& rows = asker.bench.rows();
    const auto found =
        std::find_if(rows.begin(), rows.end(), [](const FieldRow& r) { return r.path == "traverse.left_stop"; });
    CHECK(found->text == text);
  }
}

TEST_CASE("a row of a study that is no sound plan cannot be set") {
  Asker asker(small_plan);
  // Both stops beyond the middle: no room to travel.
  REQUIRE(asker.bench.apply(cmd::run_study({{{"traverse.left_stop", "0.5 mm", "25 mm", 2}}, false})));
  asker.wait(AdviceKind::study);
  REQUIRE(asker.advice().study()->study.rows[1].figures.empty());
  CHECK_FALSE(asker.bench.apply(cmd::set_advised(AdviceKind::study, 1)));
  CHECK(last_notice(asker.bench) == "There is no sound plan with those settings.");
}

TEST_CASE("study requests: what can be varied, ranges to begin with, mistakes by their fields") {
  Asker asker(small_plan);
  const Workbench& bench = asker.bench;
  const PlanDraft& draft = document(bench).state().draft;
  const std::vector<FieldRow> rows = bench.rows();
  std::set<std::string> paths;
  for (const std::size_t i : study_keys(rows)) {
    paths.insert(rows[i].path);
    const StudyAxisRequest axis = suggested_axis(draft, rows[i]);
    INFO(axis.path << " " << axis.from << " " << axis.to);
    const auto spec = spec_of({{axis}, false}, draft, rows, 1);
    REQUIRE(spec.ok());
    CHECK(spec.value().axes[0].from <= *rows[i].value);
    CHECK(spec.value().axes[0].to >= *rows[i].value);
  }
  for (const char* path :
       {"traverse.pitch", "traverse.left_stop", "fiber.diameter", "fiber.friction", "wind.turns"}) {
    CHECK(paths.count(path) == 1);
  }
  // A choice, what an instant reversal has not, another end of the wind, what changes no build.
  for (const char* path : {"traverse.motion", "traverse.reversal.turns", "wind.length", "wind.line_speed"}) {
    CHECK(paths.count(path) == 0);
  }
  const auto why = [&](StudyRequest request) { return bench.why_not(cmd::run_study(std::move(request))); };
  CHECK(why({{{"traverse.pitch", "1 mm", "0.04 in", 3}}, false}).empty());
  CHECK(why({{{"traverse.pitch", "wide", "2", 3}}, false}).find("Traverse: pitch") != std::string::npos);
  CHECK(why({{{"traverse.pitch", "1", "1 mm", 3}}, false}).find("two ends") != std::string::npos);
  CHECK_FALSE(why({{{"traverse.pitch", "1", "2", 1}}, false}).empty());
  CHECK(why({{{"traverse.pitch", "1", "2", 3}, {"traverse.pitch", "1", "2", 3}}, false}).find("twice") !=
        std::string::npos);
  CHECK_FALSE(why({}).empty());
}

TEST_CASE("a build is judged over draws: the verdict in hand is then the worst of them, until the plan changes") {
  Asker asker(flawed_plan());
  Workbench& bench = asker.bench;
  REQUIRE(wait_until(
      bench, [&] { return bench.verdict_in_hand() != nullptr; }, 200.0));
  const WindVerdict alone = *bench.verdict_in_hand();
  CHECK(alone.draws.empty());
  REQUIRE(bench.apply(cmd::judge_draws()));
  CHECK_FALSE(bench.apply(cmd::judge_draws()));  // while that is being done
  asker.wait(AdviceKind::draws);
  Progress progress;
  const Wound& wound = *bench.wound();
  const auto expected = over_draws(wound.plan(), {}, alone, usual_draws, 1, progress);
  REQUIRE(expected);
  CHECK(bench.verdict_in_hand()->draws.size() == usual_draws);
  CHECK(verdict_line(*bench.verdict_in_hand()) == verdict_line(*expected));
  CHECK_FALSE(bench.apply(cmd::set_advised(AdviceKind::draws, 0)));
  REQUIRE(bench.apply(cmd::set_field("traverse.pitch", 1.03, 0)));
  CHECK((bench.verdict_in_hand() == nullptr || bench.verdict_in_hand()->draws.empty()));
  REQUIRE(bench.apply(cmd::undo()));
  REQUIRE(wait_until(
      bench, [&] { return bench.verdict_in_hand() != nullptr && !bench.verdict_in_hand()->draws.empty(); }, 200.0));
}

TEST_CASE("a plan that states scatter is judged over draws unasked, once for each build") {
  std::string plan = flawed_plan();
  const std::string line = "friction = ";
  REQUIRE(plan.find(line) != std::string::npos);
  plan.insert(plan.find(line), "diameter_tolerance = \"0.01 mm\"\n");
  Asker asker(plan);
  Workbench& bench = asker.bench;
  const auto judged = [&] {
    return bench.verdict_in_hand() != nullptr && bench.verdict_in_hand()->draws.size() == usual_draws;
  };
  REQUIRE(wait_until(bench, judged, 200.0));
  REQUIRE(bench.apply(cmd::forget_advice(AdviceKind::draws)));
  bench.poll(Workbench::Clock::now());
  CHECK_FALSE(bench.active()->advice->status(AdviceKind::draws).busy);  // not again: it was thrown away
  REQUIRE(bench.apply(cmd::set_field("fiber.diameter_tolerance", 0.005, 0)));
  REQUIRE(wait_until(bench, judged, 200.0));
}
