// What is painted next, without a clock or a thread: times are given.
#include <catch2/catch.hpp>

#include <string>

#include "paint/order_board.h"
#include "paint/picture_exchange.h"

using namespace laywright;
using namespace std::chrono_literals;

namespace {

using Board = OrderBoard<char>;
const Board::Clock::time_point start{};
constexpr auto rest = 100ms;

// Paints what is due until nothing is, `finest` passes to a picture; gives what was painted, in order.
std::string paint_all(Board& board, Board::Clock::time_point now, int finest = 3) {
  std::string painted;
  while (const auto task = board.next(now)) {
    painted.push_back(task->order);
    painted.push_back(static_cast<char>('0' + task->pass));
    board.done(*task, task->pass >= finest);
  }
  return painted;
}

}  // namespace

TEST_CASE("of several orders for a picture only the newest is painted") {
  Board board(rest);
  for (const char order : {'a', 'b', 'c'}) board.want(1, order, start);
  CHECK(paint_all(board, start) == "c0");
}

TEST_CASE("a picture is made fine once it has stood still, and then rests") {
  Board board(rest);
  board.want(1, 'a', start);
  CHECK(paint_all(board, start) == "a0");
  CHECK(paint_all(board, start + 99ms).empty());
  REQUIRE(board.next_due() == start + rest);
  CHECK(board.unfinished(1));
  CHECK(paint_all(board, start + rest) == "a1a2a3");
  CHECK_FALSE(board.unfinished(1));
  CHECK_FALSE(board.next_due());
  CHECK(paint_all(board, start + 1h).empty());
}

TEST_CASE("wanting the same again paints nothing again") {
  Board board(rest);
  board.want(1, 'a', start);
  CHECK(paint_all(board, start + 1s) == "a0a1a2a3");
  board.want(1, 'a', start + 2s);
  CHECK_FALSE(board.next_due());
  board.want(1, 'b', start + 3s);
  CHECK(paint_all(board, start + 3s) == "b0");
}

TEST_CASE("a pass that was overtaken while it was painted does not count for the newer order") {
  Board board(rest);
  board.want(1, 'a', start);
  const auto overtaken = board.next(start);
  REQUIRE(overtaken);
  board.want(1, 'b', start + 5ms);
  board.done(*overtaken, true);
  CHECK(board.unfinished(1));
  CHECK(paint_all(board, start + 5ms) == "b0");
}

TEST_CASE("a quick picture comes before the fine passes of another") {
  Board board(rest);
  board.want(1, 'a', start);
  CHECK(paint_all(board, start) == "a0");
  board.want(2, 'b', start + rest);
  CHECK(paint_all(board, start + rest) == "b0a1a2a3");
}

TEST_CASE("of two pictures that move, each has its turn") {
  Board board(rest);
  // Both are ordered anew before and while each is painted.
  std::string painted;
  for (int i = 0; i < 4; ++i) {
    const auto now = start + i * 10ms;
    board.want(1, static_cast<char>('a' + 2 * i), now);
    board.want(2, static_cast<char>('A' + 2 * i), now + 1ms);
    const auto task = board.next(now + 1ms);
    REQUIRE(task);
    painted.push_back(task->order);
    board.want(1, static_cast<char>('b' + 2 * i), now + 5ms);
    board.want(2, static_cast<char>('B' + 2 * i), now + 6ms);
    board.done(*task, false);
  }
  CHECK(painted == "aCeG");
}

TEST_CASE("a picture that is gone is painted no more") {
  Board board(rest);
  board.want(1, 'a', start);
  const auto task = board.next(start);
  REQUIRE(task);
  board.forget(1);
  board.done(*task, false);
  CHECK_FALSE(board.next_due());
  CHECK_FALSE(board.unfinished(1));
}

TEST_CASE("the newest finished picture is shown and left alone while it is") {
  PictureExchange<int> pictures;
  CHECK(pictures.newest() == nullptr);
  pictures.blank() = 1;
  pictures.finish();
  CHECK(pictures.fresh());
  int* const shown = pictures.newest();
  REQUIRE(shown != nullptr);
  CHECK(*shown == 1);
  CHECK_FALSE(pictures.fresh());
  for (int i = 2; i < 10; ++i) {
    pictures.blank() = i;
    pictures.finish();
    CHECK(*shown == 1);
  }
  CHECK(*pictures.newest() == 9);
  CHECK(*pictures.newest() == 9);
}
