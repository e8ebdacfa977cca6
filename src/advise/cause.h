// Why a finding is there: found by trying. The plan is laid again with one setting moved at a time, further and
// further, to see what is left of the finding and of all others; then the smallest move is sought that removes it, or
// halves it. Where no single setting does, two are moved together. What is said in words comes from those trials.
//
// What is named is what can be set at the machine. Flaws of the machine, the fiber's friction, and tension and side of the start,
// which decide less than the traverse does, are named only where the evidence singles them out: where with them clearly less is
// left than with any other setting.
//
// The search lays only the first layers, as many as the finding needs to grow, at `search_fidelity`; what it finds is
// confirmed on the whole plan. Each setting is seen on several draws (draws.h).
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "advise/movable_setting.h"
#include "advise/sought_finding.h"
#include "base/result.h"

namespace laywright {

struct CauseSettings {
  LaySettings lay;  // of the build that the finding is on
  int threads = threads_at_hand();
};

// A setting that was moved.
struct Move {
  MovableSetting movable;
  double by = 0.0;
};

// How well moves explain a finding, less is better: what they leave of it and of all findings, how far they go, so that of
// two that do as much the smaller one comes first, and whether they leave a place that is usual. Two settings must leave notably less than one; the flaws of a
// machine count as one.
[[nodiscard]] double rank_of(const std::vector<Move>& moves, double share_left, double share_of_all);

// What is left after a move.
struct Rest {
  FindingAmount amount;       // of the finding, on the whole plan
  double share_left = 1.0;    // of the finding
  double share_of_all = 1.0;  // of all findings of the build
};

// A move, or two at once.
struct Remedy {
  // Shares of the amount (sought_finding.h) at which a finding counts as gone, but for odd places, and as halved.
  static constexpr double gone_share = 0.1, halved_share = 0.5;
  // Of all findings together; two draws of one wind differ by as much.
  static constexpr double no_worse = 1.1;

  std::vector<Move> moves;      // where least is left
  std::vector<Change> changes;  // the same, as values of the plan
  Rest rest;
  std::optional<double> smallest;  // a smaller move of a single setting that removes, or else halves it
  Rest after_smallest;
  Outcome outcome;
  WindVerdict verdict;             // on the whole wind with it, on one draw
  bool makes_worse = false;        // the verdict is a worse one than that on the plan as it is
  std::vector<FindingKind> grown;  // other kinds of findings that the move makes worse
  std::string text;

  // False where a flaw, or the fiber, is named: that is evidence, nothing to set.
  [[nodiscard]] bool can_be_set() const {
    return std::all_of(moves.begin(), moves.end(),
                       [](const Move& move) { return laywright::can_be_set(move.movable); });
  }

  // A plan can be set so, and is no worse for it.
  [[nodiscard]] bool is_offered() const { return can_be_set() && !makes_worse; }

  [[nodiscard]] bool gone() const { return rest.share_left <= gone_share; }
  // How well it explains; less is better.
  [[nodiscard]] double rank() const {
    constexpr double for_harm = 0.35;
    return rank_of(moves, rest.share_left, rest.share_of_all) + (grown.empty() ? 0.0 : for_harm) +
           (makes_worse ? for_harm : 0.0);
  }
};

// What a setting alone did, in one direction, on the short winds of the search.
struct TriedDial {
  MovableSetting movable;
  double furthest = 0.0;  // move
  double best = 0.0;      // move that left least of this and all findings together
  double share_left = 1.0, share_of_all = 1.0;

  [[nodiscard]] double rank() const { return rank_of({{movable, best}}, share_left, share_of_all); }
};

struct Explanation {
  Finding finding;
  SoughtFinding sought;
  FindingAmount before;  // mean of so many draws
  int draws = 0;
  Outcome outcome;               // of the plan as it is
  WindVerdict verdict;           // on its build, as on a remedy's
  std::vector<Remedy> remedies;  // the likeliest first: what removes most of this finding, and of all others
  std::vector<TriedDial> tried;
  int trials = 0;        // builds that were laid
  int layers_tried = 0;  // of the search
  bool pairs_tried = false;
  bool by_chance = false;  // other draws of the plan hardly have it
  std::string text;        // the conclusion
};

// Flaws, friction, tension, side of the start.
[[nodiscard]] bool want_evidence(const std::vector<Move>& moves);

// Takes out those, but where they leave clearly less than any other setting does.
void keep_singled_out(std::vector<Remedy>& remedies);

// Precondition: the finding is one of the build that was laid from the plan with those settings. Error when cancelled
// (its text is `stopped_text`).
[[nodiscard]] Result<Explanation> explain(const Plan& plan, const Build& build, const Measurements& measurements,
                                          const Finding& finding, const CauseSettings& settings, Progress& progress);

}  // namespace laywright
