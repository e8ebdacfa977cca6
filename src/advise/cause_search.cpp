#include "advise/cause_search.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "advise/searchable_setting.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

constexpr int reference_draws = 4;
constexpr int trial_draws = 2;

std::vector<Move> scaled(std::vector<Move> unit, double by) {
  for (Move& move : unit) move.by *= by;
  return unit;
}

// Where the machine can be set: a whole number of the setting's steps, rather more than less.
std::vector<Move> on_dial(std::vector<Move> moves) {
  constexpr double nearly = 1e-6;
  for (Move& move : moves) {
    const MovableSetting& movable = move.movable;
    if (!can_be_set(movable) || movable.is_switch) continue;
    const double by = std::copysign(std::ceil(std::abs(move.by) / movable.step - nearly) * movable.step, move.by);
    // The end of a range is none of its steps.
    if (by >= movable.lowest && by <= movable.highest) move.by = by;
  }
  return moves;
}

}  // namespace

double rank_of(const std::vector<Move>& moves, double share_left, double share_of_all) {
  constexpr double for_all_of_a_range = 0.3, for_a_second = 0.15, for_what_is_usual = 0.2;
  double rank = share_left + share_of_all;
  std::size_t settings = 0;
  bool has_flaws = false;
  for (const Move& move : moves) {
    rank += for_all_of_a_range * effort_of(move.movable, move.by);
    if (move.movable.is_usual) rank += for_what_is_usual;
    if (move.movable.is_flaw) has_flaws = true;
    if (!move.movable.is_flaw) ++settings;
  }
  settings += has_flaws ? 1 : 0;
  return rank + for_a_second * static_cast<double>(settings - 1);
}

std::vector<Change> changes_of(const PlanDraft& draft, const std::vector<Move>& moves) {
  PlanDraft moved = draft;
  std::vector<Change> all;
  for (const Move& move : moves) {
    const std::vector<Change> changes = changes_at(move.movable, moved, move.by);
    moved = with_changes(std::move(moved), changes);
    all.insert(all.end(), changes.begin(), changes.end());
  }
  return all;
}

std::optional<MeanAmount> mean_after(const std::vector<Move>& moves, const Plan& plan, const SoughtFinding& sought,
                                     const std::vector<std::optional<Trial>>& trials, std::size_t begin, int count) {
  std::optional<MeanAmount> mean = mean_amount(plan, sought, trials, begin, count);
  const bool starts_elsewhere =
      std::any_of(moves.begin(), moves.end(), [](const Move& move) { return move.movable.is_switch; });
  if (!mean || !starts_elsewhere) return mean;
  const auto other = mean_amount(plan, mirrored(sought, plan.spool().inside_width_mm), trials, begin, count);
  return other && other->of_sought.gravity > mean->of_sought.gravity ? other : mean;
}

CauseSearch::CauseSearch(const Plan& plan, const SoughtFinding& sought, const std::optional<TensionRoom>& room,
                         const CauseSettings& settings)
    : plan_(plan), sought_(sought), room_(room), settings_(settings), draft_(plan.draft()) {
  settings_.lay.fidelity *= search_fidelity;
}

bool CauseSearch::begin(const PlanDraft& draft, Progress& progress) {
  constexpr double share_of_way = 0.05;
  draft_ = draft;
  const auto trials = try_all(draws_of(draft_, settings_.lay, reference_draws), settings_.threads,
                              {progress, progress.share(), progress.share() + share_of_way});
  trials_ += reference_draws;
  const std::optional<MeanAmount> mean = mean_amount(plan_, sought_, trials, 0, reference_draws);
  before_ = mean.value_or(MeanAmount{});
  return before_.of_sought.gravity > 0.0;
}

const CauseSearch::Seen* CauseSearch::Line::best() const {
  const auto rank = [&](const Seen& each) { return rank_of(scaled(unit, each.move), each.left, each.of_all); };
  const auto as_usual = std::find_if(seen.begin(), seen.end(), [&](const Seen& each) {
    return usual && each.move == *usual && each.left <= Remedy::gone_share && each.of_all <= Remedy::gone_share;
  });
  if (as_usual != seen.end()) return &*as_usual;
  const auto least =
      std::min_element(seen.begin(), seen.end(), [&](const Seen& a, const Seen& b) { return rank(a) < rank(b); });
  return least == seen.end() ? nullptr : &*least;
}

void CauseSearch::tell(Line& line, double move, const std::optional<MeanAmount>& mean, bool of_bracket) const {
  if (!mean) {
    if (of_bracket) line.bracket.tell(move, std::nullopt);
    return;
  }
  const double left = mean->of_sought.gravity / before_.of_sought.gravity;
  const double of_all = mean->gravity_of_all / before_.gravity_of_all;
  line.seen.push_back({move, left, of_all});
  if (!of_bracket) return;
  // What makes the whole build worse is no cure.
  line.bracket.tell(move, of_all > Remedy::no_worse ? std::max(left, of_all) : left);
}

// All lines at once, a move of each in every round, so that all threads have work.
void CauseSearch::follow(std::vector<Line>& lines, Progress& progress) {
  constexpr double share_of_way = 0.2;  // of what is left of the way, for a round
  constexpr double end_of_way = 0.9;    // the rest is for the confirmation
  while (!progress.cancelled()) {
    struct Asked {
      Line* line;
      double move;
      bool of_bracket;
    };
    std::vector<Asked> asked;
    std::vector<TrialOrder> orders;
    const auto ask = [&](Line& line, double move, bool of_bracket) {
      asked.push_back({&line, move, of_bracket});
      const PlanDraft moved = with_changes(draft_, changes_of(draft_, scaled(line.unit, move)));
      for (TrialOrder& order : draws_of(moved, settings_.lay, trial_draws)) orders.push_back(std::move(order));
    };
    for (Line& line : lines) {
      if (const std::optional<double> move = line.bracket.next()) ask(line, *move, true);
      // Once: a bracket ends at the first move that is enough for the finding, and the wind may still be none to be wound.
      if (line.usual && !std::exchange(line.usual_tried, true)) ask(line, *line.usual, false);
    }
    if (asked.empty()) return;
    const double way = progress.share();
    const auto trials =
        try_all(orders, settings_.threads, {progress, way, way + share_of_way * std::max(0.0, end_of_way - way)});
    if (progress.cancelled()) return;
    trials_ += static_cast<int>(orders.size());
    for (std::size_t i = 0; i < asked.size(); ++i) {
      Line& line = *asked[i].line;
      tell(line, asked[i].move, mean_after(line.unit, plan_, sought_, trials, i * trial_draws, trial_draws),
           asked[i].of_bracket);
    }
  }
}

std::vector<Candidate> CauseSearch::candidates(const std::vector<Line>& lines) const {
  std::vector<Candidate> all;
  for (const Line& line : lines) {
    const Seen* best = line.best();
    if (best == nullptr || best->left > Remedy::halved_share || best->of_all > Remedy::no_worse) continue;
    Candidate candidate{on_dial(scaled(line.unit, best->move)), std::nullopt, best->left, best->of_all};
    std::optional<Bracket::Tried> smallest = line.bracket.smallest(Remedy::gone_share);
    if (!smallest) smallest = line.bracket.smallest(Remedy::halved_share);
    if (line.unit.size() == 1 && smallest && std::abs(smallest->move) < std::abs(best->move)) {
      candidate.smallest = on_dial(scaled(line.unit, smallest->move)).front().by;
    }
    all.push_back(std::move(candidate));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Candidate& a, const Candidate& b) { return a.rank() < b.rank(); });
  return all;
}

void CauseSearch::note_tried(const std::vector<Line>& lines) {
  for (const Line& line : lines) {
    const Seen* best = line.best();
    if (best == nullptr || line.unit.size() > 1) continue;
    TriedDial tried{line.unit.front().movable, 0.0, best->move, best->left, best->of_all};
    for (const Seen& each : line.seen) {
      if (std::abs(each.move) > std::abs(tried.furthest)) tried.furthest = each.move;
    }
    tried_.push_back(std::move(tried));
  }
}

std::optional<double> CauseSearch::usual_move(const MovableSetting& movable, double limit) const {
  if (movable.is_switch || movable.is_usual || movable.parts.size() > 1) return std::nullopt;
  const MovableSetting::Part& part = movable.parts.front();
  const std::optional<double> usual = usual_value(draft_, part.path), now = value_at(draft_, part.path);
  if (!usual || !now) return std::nullopt;
  const double move = part.sign * (*usual - *now);
  const bool there = std::abs(move)<movable.step, in_reach = move / limit> 0.0 && move / limit <= 1.0;
  return !there && in_reach ? std::optional(move) : std::nullopt;
}

std::vector<Candidate> CauseSearch::try_singles(Progress& progress) {
  std::vector<Line> lines;
  for (const MovableSetting& movable : movables_of(draft_, room_)) {
    const double first = std::max(movable.step, movable.first);
    for (const double limit : {movable.lowest, movable.highest}) {
      if (limit == 0.0) continue;
      lines.push_back({{{movable, 1.0}},
                       Bracket(std::min(first, std::abs(limit)), limit, Remedy::gone_share),
                       {},
                       usual_move(movable, limit)});
    }
  }
  // What is worn is worn together.
  if (const std::vector<MovableSetting> flaws = flaws_of(draft_); flaws.size() > 1) {
    Line all_flaws{{}, Bracket(1.0, 1.0, Remedy::gone_share), {}, {}};
    for (const MovableSetting& flaw : flaws) all_flaws.unit.push_back({flaw, flaw.lowest + flaw.highest});
    lines.push_back(std::move(all_flaws));
  }
  follow(lines, progress);
  note_tried(lines);
  return candidates(lines);
}

std::vector<Candidate> CauseSearch::try_pairs(Progress& progress) {
  constexpr std::size_t best_settings = 4;
  constexpr double first = 0.5, furthest = 1.0;  // of the moves that were best for each alone
  std::vector<Line> lines;
  for (const MovableSetting& movable : stop_pairs_of(draft_)) {
    for (const double limit : {movable.lowest, movable.highest}) {
      lines.push_back({{{movable, 1.0}}, Bracket(movable.step, limit, Remedy::gone_share), {}, {}});
    }
  }
  std::vector<TriedDial> best = tried_;
  std::stable_sort(best.begin(), best.end(),
                   [](const TriedDial& a, const TriedDial& b) { return a.rank() < b.rank(); });
  // What makes it worse by itself is no help.
  std::erase_if(best, [](const TriedDial& each) {
    return each.share_left >= 1.0 || !can_be_set(each.movable) || each.movable.wants_evidence;
  });
  if (best.size() > best_settings) best.resize(best_settings);
  for (std::size_t i = 0; i < best.size(); ++i) {
    for (std::size_t k = i + 1; k < best.size(); ++k) {
      if (best[i].movable.words == best[k].movable.words) continue;
      lines.push_back({{{best[i].movable, best[i].best}, {best[k].movable, best[k].best}},
                       Bracket(first, furthest, Remedy::gone_share),
                       {},
                       {}});
    }
  }
  follow(lines, progress);
  return candidates(lines);
}

}  // namespace laywright
