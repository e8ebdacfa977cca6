#include <algorithm>
#include <cmath>
#include <string>

#include <catch2/catch.hpp>

#include "advise/cause.h"
#include "advise/cause_words.h"
#include "narrow_plan.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

Explanation explained(const PlanDraft& draft, FindingKind kind, int threads = 2) {
  const Wound wind = wound(draft);
  const auto& findings = wind.measurements.findings;
  const auto found =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.kind == kind; });
  REQUIRE(found != findings.end());
  Progress progress;
  CauseSettings settings;
  settings.threads = threads;
  Result<Explanation> explanation = explain(wind.plan, wind.build, wind.measurements, *found, settings, progress);
  REQUIRE(explanation.ok());
  return std::move(explanation).value();
}

// The key that the likeliest remedy turns.
std::string blamed(const Explanation& explanation) {
  UNSCOPED_INFO(explanation.text);
  REQUIRE_FALSE(explanation.remedies.empty());
  return explanation.remedies.front().moves.front().movable.parts.front().path;
}

}  // namespace

TEST_CASE("a pitch that is too fine is found to be the cause of ride-ups") {
  PlanDraft draft = narrow_draft();
  draft.traverse.pitch_mm = 0.235;  // 0.94 d
  const Explanation explanation = explained(draft, FindingKind::ride_up);
  CHECK(blamed(explanation) == "traverse.pitch");
  const Remedy& remedy = explanation.remedies.front();
  CHECK(remedy.gone());
  // No room for a turn below a pitch of d.
  CHECK(remedy.changes.front().value > 0.95 * 0.25);
  CHECK_THAT(explanation.text, Catch::Matchers::Contains("The pitch is") && Catch::Matchers::Contains("too fine"));
}

TEST_CASE("of a pitch far too coarse, the usual one is named, and not the first at which there is less to see") {
  PlanDraft draft = narrow_draft();
  draft.traverse.pitch_mm = 0.5;  // 2 d
  const Explanation explanation = explained(draft, FindingKind::gap);
  CHECK(explanation.verdict.grade == Grade::do_not_wind);
  CHECK(blamed(explanation) == "traverse.pitch");
  const Remedy& remedy = explanation.remedies.front();
  CHECK(remedy.gone());
  CHECK(remedy.changes.front().value == Approx(1.04 * 0.25).margin(0.006));
  CHECK(remedy.verdict.grade != Grade::do_not_wind);
}

TEST_CASE("a stop far from its flange is found to be the cause of the gap there, and the other is not") {
  PlanDraft draft = narrow_draft();
  draft.traverse.right_stop_mm = 1.3;
  const Explanation explanation = explained(draft, FindingKind::flange_gap);
  REQUIRE(explanation.finding.side == Side::right);
  CHECK(blamed(explanation) == "traverse.right_stop");
  CHECK(explanation.remedies.front().changes.front().value < 0.6);
  const auto other = std::find_if(explanation.tried.begin(), explanation.tried.end(), [](const TriedDial& tried) {
    return tried.movable.parts.front().path == "traverse.left_stop";
  });
  REQUIRE(other != explanation.tried.end());
  CHECK(other->share_left > 0.5);
}

TEST_CASE("a long dwell is found to be the cause of piled edges") {
  PlanDraft draft = narrow_draft();
  draft.traverse.reversal.kind = ReversalKind::dwell;
  draft.traverse.reversal.turns = 4.0;
  const Explanation explanation = explained(draft, FindingKind::pile_up);
  CHECK(blamed(explanation) == "traverse.reversal.turns");
  CHECK(explanation.remedies.front().moves.front().by < -1.0);
}

TEST_CASE("friction and flaws are no settings, and are named only where no setting does nearly as much") {
  PlanDraft draft = narrow_draft();
  draft.traverse.right_stop_mm = 1.3;
  draft.traverse.reversal.lost_motion_mm = 0.05;
  const Explanation explanation = explained(draft, FindingKind::flange_gap);
  CHECK(blamed(explanation) == "traverse.right_stop");
  for (const Remedy& remedy : explanation.remedies) {
    UNSCOPED_INFO(remedy.text);
    CHECK(remedy.can_be_set());
  }
  // They were tried all the same.
  CHECK(std::any_of(explanation.tried.begin(), explanation.tried.end(),
                    [](const TriedDial& tried) { return tried.movable.parts.front().path == "fiber.friction"; }));
}

TEST_CASE("a flaw is named beside a setting only where clearly less is left without it") {
  PlanDraft draft = narrow_draft();
  draft.traverse.reversal.lost_motion_mm = 0.3;
  const std::vector<MovableSetting> movables = movables_of(draft);
  const auto remedy_of = [&](const std::string& path, double share_left) {
    const auto movable = std::find_if(movables.begin(), movables.end(),
                                      [&](const MovableSetting& each) { return each.parts.front().path == path; });
    REQUIRE(movable != movables.end());
    Remedy remedy;
    remedy.moves = {{*movable, -movable->step}};
    remedy.rest.share_left = remedy.rest.share_of_all = share_left;
    return remedy;
  };
  const Remedy flaw = remedy_of("traverse.reversal.lost_motion", 0.05), friction = remedy_of("fiber.friction", 0.05);
  CHECK_FALSE(flaw.can_be_set());
  CHECK_FALSE(friction.can_be_set());

  std::vector<Remedy> as_good{flaw, friction, remedy_of("traverse.left_stop", 0.05)};
  keep_singled_out(as_good);
  REQUIRE(as_good.size() == 1);
  CHECK(as_good.front().can_be_set());

  std::vector<Remedy> far_better{flaw, remedy_of("traverse.left_stop", 0.5)};
  keep_singled_out(far_better);
  CHECK(far_better.size() == 2);

  std::vector<Remedy> alone{flaw};
  keep_singled_out(alone);
  CHECK(alone.size() == 1);
}

TEST_CASE("what is said of places counts those of the finding as it is listed") {
  PlanDraft draft = narrow_draft();
  draft.traverse.reversal.kind = ReversalKind::dwell;
  draft.traverse.reversal.turns = 4.0;
  Explanation explanation = explained(draft, FindingKind::pile_up);
  REQUIRE_FALSE(explanation.remedies.empty());
  Remedy& remedy = explanation.remedies.front();
  const int places = explanation.finding.occurrences;
  REQUIRE(places > 4);
  // A quarter is left on the mean of the draws.
  remedy.rest.share_left = 0.25;
  remedy.rest.amount.places = 0.25 * explanation.before.places;
  remedy.smallest.reset();
  const int left = static_cast<int>(std::lround(0.25 * places));
  CHECK_THAT(
      words_of(checked(draft), explanation, remedy),
      Catch::Matchers::Contains("about " + std::to_string(left) + " of its " + std::to_string(places) + " places"));
}

TEST_CASE("the explanation is the same on one thread and on two") {
  PlanDraft draft = narrow_draft();
  draft.traverse.pitch_mm = 0.235;
  draft.wind.turns = 200.0;
  const Explanation one = explained(draft, FindingKind::ride_up, 1), two = explained(draft, FindingKind::ride_up, 2);
  CHECK(one.text == two.text);
  CHECK(one.trials == two.trials);
}

TEST_CASE("a search that is stopped says so") {
  PlanDraft draft = narrow_draft();
  draft.traverse.pitch_mm = 0.235;
  const Wound wind = wound(draft);
  Progress progress;
  progress.cancel();
  const Result<Explanation> stopped =
      explain(wind.plan, wind.build, wind.measurements, wind.measurements.findings.front(), {}, progress);
  REQUIRE_FALSE(stopped.ok());
  CHECK(stopped.issues().front().what == stopped_text);
}

namespace {

WindVerdict verdict_with(Grade grade, const char* reason) {
  WindVerdict verdict;
  verdict.grade = grade;
  verdict.reason = reason;
  return verdict;
}

}  // namespace

TEST_CASE(
    "a remedy says what the verdict on the whole wind is then, and why, and one that makes it worse is not "
    "offered") {
  PlanDraft draft = narrow_draft();
  draft.traverse.right_stop_mm = 1.3;
  const auto movables = movables_of(draft);
  const auto stop = std::find_if(movables.begin(), movables.end(), [](const MovableSetting& each) {
    return each.parts.front().path == "traverse.right_stop";
  });
  REQUIRE(stop != movables.end());
  Explanation explanation;
  explanation.verdict = verdict_with(Grade::marginal, "a gap");
  Remedy remedy;
  remedy.moves = {{*stop, -1.0}};
  const auto told = [&](const WindVerdict& verdict) {
    remedy.verdict = verdict;
    remedy.makes_worse = verdict.grade > explanation.verdict.grade;
    return words_of(checked(draft), explanation, remedy);
  };
  using Catch::Matchers::Contains;
  CHECK_THAT(told(verdict_with(Grade::good, "")), Contains("The wind as a whole is then good."));
  CHECK(remedy.is_offered());
  CHECK_THAT(told(verdict_with(Grade::marginal, "the ridge is 0.9 high")),
             Contains("The wind as a whole stays marginal: the ridge is 0.9 high."));
  CHECK(remedy.is_offered());
  CHECK_THAT(told(verdict_with(Grade::do_not_wind, "the ridge is 3 high")),
             Contains("is then not to be wound: the ridge is 3 high.") &&
                 Contains("worse than as it is (marginal): do not set it so"));
  CHECK_FALSE(remedy.is_offered());
  explanation.verdict.grade = Grade::do_not_wind;
  CHECK_THAT(told(verdict_with(Grade::do_not_wind, "the ridge is 3 high")),
             Contains("is still not to be wound: the ridge is 3 high."));
  CHECK(remedy.is_offered());
}

TEST_CASE("the verdicts of an explanation weigh the whole wind, with its machine and its payoff") {
  PlanDraft draft = narrow_draft();
  draft.traverse.right_stop_mm = 1.3;
  draft.wind.turns = 200.0;
  const Explanation explanation = explained(draft, FindingKind::flange_gap);
  REQUIRE_FALSE(explanation.remedies.empty());
  const auto weighs_payoff = [](const WindVerdict& verdict) {
    return std::any_of(verdict.checks.begin(), verdict.checks.end(),
                       [](const Check& check) { return check.what == Weighed::payoff_force; });
  };
  CHECK(weighs_payoff(explanation.verdict));
  for (const Remedy& remedy : explanation.remedies) CHECK(weighs_payoff(remedy.verdict));
}
