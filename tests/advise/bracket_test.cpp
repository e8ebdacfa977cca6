#include <cmath>

#include <catch2/catch.hpp>

#include "advise/bracket.h"

using namespace laywright;

namespace {

// Follows a bracket to its end on a function of the move; how many moves it took.
template <class Function>
int follow(Bracket& bracket, Function share) {
  int moves = 0;
  while (const std::optional<double> move = bracket.next()) {
    bracket.tell(*move, share(*move));
    REQUIRE(++moves < 100);
  }
  return moves;
}

std::optional<double> falling(double move) { return std::max(0.0, 1.0 - std::abs(move)); }

}  // namespace

TEST_CASE("a bracket finds the smallest move that is enough, in either direction") {
  // What is left falls evenly and is at 0.1 after a move of 0.9.
  for (const double sign : {1.0, -1.0}) {
    Bracket bracket(0.05, sign * 10.0, 0.1);
    CHECK(follow(bracket, falling) < 20);
    REQUIRE(bracket.smallest(0.1));
    CHECK(bracket.smallest(0.1)->move * sign >= 0.9);
    CHECK(bracket.smallest(0.1)->move * sign <= 0.9 * 1.1 + 0.025);
    REQUIRE(bracket.smallest(0.5));
    CHECK(bracket.smallest(0.5)->move * sign >= 0.5);
    CHECK(bracket.best()->share == 0.0);
  }
}

TEST_CASE("a bracket goes to the end of its range, and no further") {
  Bracket bracket(0.3, 1.0, 0.1);
  double furthest = 0.0;
  follow(bracket, [&](double move) -> std::optional<double> {
    furthest = std::max(furthest, move);
    return 1.0;
  });
  CHECK(furthest == 1.0);
  CHECK_FALSE(bracket.smallest(0.5));
}

TEST_CASE("a bracket stops growing where a plan is no longer sound") {
  Bracket bracket(1.0, 100.0, 0.1);
  int refused = 0;
  follow(bracket, [&](double move) -> std::optional<double> {
    if (move <= 4.0) return 1.0;
    ++refused;
    return std::nullopt;
  });
  CHECK(refused == 1);
  CHECK(bracket.best()->move == 1.0);
}

TEST_CASE("a setting that cannot be moved is left alone") { CHECK_FALSE(Bracket(1.0, 0.0, 0.1).next()); }
