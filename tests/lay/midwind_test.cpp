// Settings that change while a spool is wound.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "lay/guide.h"
#include "plans.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

PlanDraft narrow(ReversalKind kind, Motion motion = Motion::continuous) {
  PlanDraft draft = plain_draft();
  draft.spool.inside_width_mm = 6.0;
  draft.traverse.motion = motion;
  draft.traverse.step_angle_rad = motion == Motion::stepped ? 0.5 : 0.0;
  draft.traverse.reversal.kind = kind;
  draft.traverse.reversal.turns = kind == ReversalKind::instant ? 0.0 : 1.5;
  draft.traverse.free_length_mm = 30.0;
  draft.wind.turns = 100.0;
  return draft;
}

Plan checked_plan(const PlanDraft& draft) { return check(draft).value(); }

Build build_of(const PlanDraft& draft, const MidwindChange& change = {}) {
  Progress progress;
  LaySettings settings;
  settings.fidelity = 0.5;
  settings.change = change;
  return lay(checked_plan(draft), settings, progress).value();
}

struct Reached {
  double least = HUGE_VAL, greatest = -HUGE_VAL;
};

// Where a guide comes after `from` turns; steps of an odd part of a turn.
Reached reached_after(const Plan& plan, const MidwindChange& change, double until) {
  constexpr double turn = 2.0 * std::numbers::pi;
  Guide guide(plan, 1);
  Reached reached;
  bool changed = false;
  for (double at = 0.0; at < until * turn;) {
    if (!changed && at >= change.from_turn * turn) {
      guide.change(change);
      changed = true;
    }
    const double before = guide.x();
    const GuidePiece piece = guide.advance(0.0371);
    at += piece.angle;
    // However it is changed, the guide does not jump.
    REQUIRE(std::abs(piece.start - before) < 1e-9);
    REQUIRE(std::abs(guide.x() - before) < 1.1 * plan.traverse().pitch_mm);
    if (at < (change.from_turn + 60.0) * turn) continue;  // two strokes later
    reached.least = std::min(reached.least, guide.x());
    reached.greatest = std::max(reached.greatest, guide.x());
  }
  return reached;
}

}  // namespace

TEST_CASE("a change of nothing is the plain wind, bit for bit") {
  for (const ReversalKind kind : {ReversalKind::instant, ReversalKind::dwell, ReversalKind::ramp}) {
    MidwindChange nothing;
    nothing.from_turn = 40.3;
    CHECK(build_of(narrow(kind), nothing).hash() == build_of(narrow(kind)).hash());
  }
}

TEST_CASE("a change from the first turn on is a plan with those settings") {
  for (const ReversalKind kind : {ReversalKind::instant, ReversalKind::dwell, ReversalKind::ramp}) {
    PlanDraft draft = narrow(kind);
    draft.wind.steps.push_back({3, 0.28, {}, 0.2});
    MidwindChange change;
    change.pitch_factor = 1.02;
    change.right_stop_mm = -0.05;
    change.reversal_turns = kind == ReversalKind::dwell ? 0.75 : 0.0;
    PlanDraft other = draft;
    other.traverse.pitch_mm *= change.pitch_factor;
    other.traverse.right_stop_mm += change.right_stop_mm;
    other.traverse.reversal.turns += change.reversal_turns;
    *other.wind.steps[0].pitch_mm *= change.pitch_factor;
    *other.wind.steps[0].right_stop_mm += change.right_stop_mm;
    CHECK(build_of(draft, change).hash() == build_of(other).hash());
  }
}

TEST_CASE("what lies firm before the turn of a change is as without it, and what comes after is not") {
  const PlanDraft draft = narrow(ReversalKind::instant);
  MidwindChange change;
  change.from_turn = 40.0;
  change.right_stop_mm = 0.4;
  change.pitch_factor = 1.05;
  const Build plain = build_of(draft), changed = build_of(draft, change);
  REQUIRE(plain.stations_per_turn == changed.stations_per_turn);
  // Less than a turn can still move when it comes.
  const auto firm = static_cast<std::size_t>((change.from_turn - 1.0) * plain.stations_per_turn);
  const auto same = [&](std::size_t k) {
    return plain.nodes.x(k) == changed.nodes.x(k) && plain.nodes.r(k) == changed.nodes.r(k) &&
           plain.nodes.support(k) == changed.nodes.support(k);
  };
  std::size_t k = 0;
  while (k < plain.nodes.size() && same(k)) ++k;
  CHECK(k >= firm);
  CHECK(k < firm + 3 * static_cast<std::size_t>(plain.stations_per_turn));
}

TEST_CASE("after a change the guide turns round at the new stops, whatever it did when it came") {
  for (const ReversalKind kind : {ReversalKind::instant, ReversalKind::dwell, ReversalKind::ramp}) {
    for (const Motion motion : {Motion::continuous, Motion::stepped}) {
      if (motion == Motion::stepped && kind == ReversalKind::ramp) continue;
      const Plan plan = checked_plan(narrow(kind, motion));
      for (double from = 20.0; from < 50.0; from += 1.37) {
        MidwindChange change;
        change.from_turn = from;
        change.left_stop_mm = 0.5;
        change.right_stop_mm = 0.25;
        change.pitch_factor = 1.1;
        INFO("from turn " << from << ", reversal " << static_cast<int>(kind));
        const Reached reached = reached_after(plan, change, from + 120.0);
        CHECK(reached.least == Approx(0.125 + 0.5));
        CHECK(reached.greatest == Approx(6.0 - 0.125 - 0.25));
      }
    }
  }
}
