// The balance of a rolling step: how far each node rolls along its contact.
//
// What string and twist together hold is least,
//
//   (1/2) u S u - pull u + (1/2) u K u - twist u
//
// (u: how far each node rolls; S, K: string and twist along the chain of nodes). A node without a contact to roll on stays
// and keeps its twist, one that hangs stays and turns freely, one in a valley goes only out of it. The sum is convex: there
// is one answer, that changes little where pull and twist do (derived). It is found by rounds: solved for the nodes that
// are taken to leave their valleys, and those that the answer contradicts do otherwise.
#include <cmath>

#include "lay/string_window.h"

namespace laywright {
namespace {

// Most steps take one or two; one in some hundreds turns in circles, and is left after so many as it is: the next goes on.
constexpr int most_balances = 20;

// A push out of a valley within this share of what friction bears is none: where a node has come back to its valley, it is
// zero.
constexpr double no_push = 1e-6;

}  // namespace

// Takes what the balance came out as; false where it contradicts what the node was taken to do, which is changed.
// `beside`: the pull of those beside it that have moved.
bool StringWindow::RollRow::agrees(double beside) {
  if (way == 0) return true;
  const bool out = moves() ? turns * way >= 0.0 : way * (pull + beside + twist_after) > no_push * bears;
  const State now = out ? State::rolls : State::held;
  const bool as_taken = now == state;
  state = now;
  return as_taken;
}

// Solves for what each node is taken to do. False when it can't be solved.
bool StringWindow::solve_rolls() {
  for (std::size_t i = 0; i < rolls_.size();) {
    // Nothing passes a node that is held: what lies between two of them stands alone.
    std::size_t end = i;
    while (end < rolls_.size() && rolls_[end].state != RollRow::State::held) ++end;
    if (end == i) {
      rolls_[i].turns = 0.0;
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
  matrix_.reset(nodes, 1);
  moves_.resize(nodes);
  for (std::size_t i = 0; i < nodes; ++i) {
    const RollRow& row = rolls_[first + i];
    matrix_.at(i, i) = row.stiffness + (row.moves() ? row.string : 0.0);
    moves_[i] = row.twist + (row.moves() ? row.pull : 0.0);
    for (const std::size_t beside : {i - 1, i + 1}) {
      if (beside >= nodes) continue;
      const RollRow& other = rolls_[first + beside];
      matrix_.at(i, beside) = -roll_.stiffness - (row.moves() && other.moves() ? row.along(other) : 0.0);
    }
  }
  if (!matrix_.solve(moves_)) return false;
  for (std::size_t i = 0; i < nodes; ++i) rolls_[first + i].turns = moves_[i];
  return true;
}

// Fills in how far each node of rolls_, the first of which is node `low`, turns. False when it can't be solved.
bool StringWindow::balance_rolls(std::size_t low) {
  const double k = roll_.stiffness;
  const std::size_t nodes = rolls_.size();
  for (std::size_t i = 0; i < nodes; ++i) {
    const std::size_t at = low + i;
    const bool tip = at + 1 == count_;
    const double rolled = node(at).rolled;
    // The guide does not let the fiber turn: the span bears twist as it bears tension.
    const double after = tip ? -end_.stiffness_x * rolled : node(at + 1).rolled - rolled;
    RollRow& row = rolls_[i];
    row.twist = k * (node(at - 1).rolled - rolled + after);
    // Without bending: on the diagonal alone it would hold a stretch that moves as a whole.
    row.string = string_stiffness_of(at);
    row.stiffness = k * (1.0 + (tip ? end_.stiffness_x : 1.0));
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
      if (i > 0) beside += row.along(rolls_[i - 1]) * rolls_[i - 1].goes();
      if (i + 1 < nodes) beside += row.along(rolls_[i + 1]) * rolls_[i + 1].goes();
      if (!row.agrees(beside)) settled = false;
    }
    if (settled) break;
  }
  return true;
}

}  // namespace laywright
