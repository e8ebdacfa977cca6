// The trials behind an explanation.
#pragma once

#include <utility>
#include <vector>

#include "advise/bracket.h"
#include "advise/cause.h"
#include "advise/draws.h"

namespace laywright {

// A way to have less of a finding, as a search on short winds found it.
struct Candidate {
  std::vector<Move> moves;
  std::optional<double> smallest;  // of a single move
  double share_left = 1.0, share_of_all = 1.0;

  [[nodiscard]] double rank() const { return rank_of(moves, share_left, share_of_all); }
};

// What the moves leave, over the draws of such trials (draws.h). A start at the other flange may but take the finding there: then
// the greater amount of both sides counts.
[[nodiscard]] std::optional<MeanAmount> mean_after(const std::vector<Move>& moves, const Plan& plan,
                                                   const SoughtFinding& sought,
                                                   const std::vector<std::optional<Trial>>& trials,
                                                   std::size_t begin, int count);

class CauseSearch {
 public:
  // `room`: of the plan's tension.
  CauseSearch(const Plan& plan, const SoughtFinding& sought, const std::optional<TensionRoom>& room,
              const CauseSettings& settings);

  // Lays the reference: the plan, ended after so many turns. False when the finding does not show on it, or cancelled.
  bool begin(const PlanDraft& draft, Progress& progress);
  // Each setting of the plan by itself. Candidates that remove or halve the finding, best first.
  [[nodiscard]] std::vector<Candidate> try_singles(Progress& progress);
  // Two at once: the stops together, and the settings that did most by themselves.
  [[nodiscard]] std::vector<Candidate> try_pairs(Progress& progress);

  [[nodiscard]] const std::vector<TriedDial>& tried() const { return tried_; }
  [[nodiscard]] int trials() const { return trials_; }

 private:
  struct Seen {
    double move, left, of_all;
  };
  // One line of search: a direction of moves, two taken together in fixed proportion.
  struct Line {
    std::vector<Move> unit;  // at move 1
    Bracket bracket;
    std::vector<Seen> seen;
    std::optional<double> usual;  // where the setting usually stands, as a move; tried beside the bracket's, once
    bool usual_tried = false;

    // The usual one where it is enough: a few layers tell little of what else it is better for.
    [[nodiscard]] const Seen* best() const;
  };

  void follow(std::vector<Line>& lines, Progress& progress);
  [[nodiscard]] std::optional<double> usual_move(const MovableSetting& movable, double limit) const;
  void tell(Line& line, double move, const std::optional<MeanAmount>& mean, bool of_bracket) const;
  [[nodiscard]] std::vector<Candidate> candidates(const std::vector<Line>& lines) const;
  void note_tried(const std::vector<Line>& lines);

  const Plan& plan_;
  SoughtFinding sought_;
  std::optional<TensionRoom> room_;
  CauseSettings settings_;
  PlanDraft draft_;  // the short one
  MeanAmount before_;
  std::vector<TriedDial> tried_;
  int trials_ = 0;
};

// All changes of moves that are made together; two moves may turn the same key.
[[nodiscard]] std::vector<Change> changes_of(const PlanDraft& draft, const std::vector<Move>& moves);

}  // namespace laywright
