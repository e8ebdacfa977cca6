// The balance of a rolling step: how far each node goes along its contact, and by how much it turns.
//
// Both together make least, by the string, the twist and the work of friction,
//
//   (1/2) a S a - pull a + (1/2) u K u - twist u + sum of bears |u - a|
//
// (a: goes, u: turns; S, K: string and twist along the chain of nodes; bears: what friction bears there). Where a node
// rolls u = a, and friction passes on what twist asks; where twist asks more than friction bears, the fiber slips: it turns
// by itself, and is pushed along by no more than that. A node without a contact to roll on has a = 0, one in a valley goes
// only out of it. The sum is convex: there is one answer, that changes little where pull and twist do (derived). It is
// found by rounds: solved for what each node is taken to do, and nodes that the answer contradicts do otherwise.
#include <cmath>

#include "lay/string_window.h"

namespace laywright {
namespace {

// Most steps take one or two; one in some hundreds turns in circles, and is left after so many as it is: the next goes on.
constexpr int most_balances = 20;

// A twist within this share of what friction bears is borne: where the fiber slips, both are equal.
constexpr double slip_tolerance = 1e-6;

}  // namespace

// What node k asks by its twist, and what resists.
void StringWindow::RollRow::twisted(double asked, double string_resists, double twist_resists) {
  twist = asked;
  string = string_resists;
  stiffness = twist_resists;
  state = can_move ? State::rolls : State::held;
  if (asks_too_much(twist)) slip(twist);
}

bool StringWindow::RollRow::asks_too_much(double asked) const {
  return bears == 0.0 || std::abs(asked) > bears * (1.0 + slip_tolerance);
}

void StringWindow::RollRow::slip(double asked) {
  state = state == State::rolls ? State::slips : State::turns;
  passes_on = std::copysign(bears, asked);
}

// Takes what the balance came out as; false where it contradicts what the node was taken to do, which is changed.
// `beside`: the pull of those beside it that have moved.
bool StringWindow::RollRow::agrees(double beside) {
  const State was = state;
  const bool slides = state == State::slips || state == State::turns;
  if (moves() && goes * way < 0.0) {
    // It would go back into its valley.
    state = slides ? State::turns : State::held;
  } else if (can_move && !moves() &&
             way * (pull + beside + (slides ? passes_on : twist_after)) > slip_tolerance * bears) {
    state = slides ? State::slips : State::rolls;
  } else if (!slides) {
    if (asks_too_much(twist_after)) slip(twist_after);
  } else if (bears > 0.0 && passes_on * (turns - goes) < 0.0) {
    state = moves() ? State::rolls : State::held;
  }
  return state == was;
}

// Solves for what each node is taken to do. False when it can't be solved.
bool StringWindow::solve_rolls() {
  for (std::size_t i = 0; i < rolls_.size();) {
    // Nothing passes a node that is held: what lies between two of them stands alone.
    std::size_t end = i;
    while (end < rolls_.size() && rolls_[end].state != RollRow::State::held) ++end;
    if (end == i) {
      rolls_[i].goes = rolls_[i].turns = 0.0;
      ++i;
      continue;
    }
    if (!solve_rolls_between(i, end)) return false;
    i = end;
  }
  return true;
}

// Of the nodes first .. end - 1, none of which is held.
bool StringWindow::solve_rolls_between(std::size_t first, std::size_t end) {
  const std::size_t nodes = end - first;
  matrix_.reset(2 * nodes, 3);
  moves_.assign(2 * nodes, 0.0);
  for (std::size_t i = 0; i < nodes; ++i) {
    const RollRow& row = rolls_[first + i];
    const std::size_t goes = 2 * i;
    const std::size_t turns = goes + 1;
    const bool rolls = row.state == RollRow::State::rolls;
    matrix_.at(goes, goes) = row.moves() ? row.string : 1.0;
    if (row.moves()) moves_[goes] = row.pull + (rolls ? row.twist : row.passes_on);
    if (rolls) {
      matrix_.at(turns, goes) = -1.0;
      matrix_.at(turns, turns) = 1.0;
    }
    // The balance of twist: by itself where the fiber slips, in one with that of the string where it rolls.
    const std::size_t balance = rolls ? goes : turns;
    matrix_.at(balance, turns) += row.stiffness;
    if (!rolls) moves_[turns] = row.twist - row.passes_on;
    for (const std::size_t beside : {i - 1, i + 1}) {
      if (beside >= nodes) continue;
      const RollRow& other = rolls_[first + beside];
      matrix_.at(balance, 2 * beside + 1) = -roll_.stiffness;
      if (row.moves() && other.moves()) matrix_.at(goes, 2 * beside) = -row.along(other);
    }
  }
  if (!matrix_.solve(moves_)) return false;
  for (std::size_t i = 0; i < nodes; ++i) {
    rolls_[first + i].goes = moves_[2 * i];
    rolls_[first + i].turns = moves_[2 * i + 1];
  }
  return true;
}

// Fills in how far each node of rolls_, the first of which is node `low`, goes and turns. False when it can't be solved.
bool StringWindow::balance_rolls(std::size_t low) {
  const double k = roll_.stiffness;
  const std::size_t nodes = rolls_.size();
  for (std::size_t i = 0; i < nodes; ++i) {
    const std::size_t at = low + i;
    const bool tip = at + 1 == count_;
    const double rolled = node(at).rolled;
    // The guide does not let the fiber turn: the span bears twist as it bears tension.
    const double after = tip ? -end_.stiffness_x * rolled : node(at + 1).rolled - rolled;
    // Without bending: on the diagonal alone it would hold a stretch that moves as a whole.
    rolls_[i].twisted(k * (node(at - 1).rolled - rolled + after), string_stiffness_of(at),
                      k * (1.0 + (tip ? end_.stiffness_x : 1.0)));
  }
  for (int round = 0; round < most_balances; ++round) {
    if (!solve_rolls()) return false;
    for (std::size_t i = 0; i < nodes; ++i) {
      RollRow& row = rolls_[i];
      row.twist_after = row.twist - row.stiffness * row.turns;
      if (i > 0) row.twist_after += k * rolls_[i - 1].turns;
      if (i + 1 < nodes) row.twist_after += k * rolls_[i + 1].turns;
    }
    bool settled = true;
    for (std::size_t i = 0; i < nodes; ++i) {
      RollRow& row = rolls_[i];
      double beside = 0.0;
      if (row.can_move && i > 0) beside += row.along(rolls_[i - 1]) * rolls_[i - 1].goes;
      if (row.can_move && i + 1 < nodes) beside += row.along(rolls_[i + 1]) * rolls_[i + 1].goes;
      if (!row.agrees(beside)) settled = false;
    }
    if (settled) break;
  }
  return true;
}

}  // namespace laywright
