// What a panel has made in the background: it comes, or why it does not.
#include <memory>
#include <new>
#include <string>
#include <thread>

#include <catch2/catch.hpp>

#include "jobs/flag.h"
#include "ui/panel_work.h"

using namespace laywright;

namespace {

template <class Made>
std::optional<Made> awaited(PanelWork<Made>& work) {
  while (!work.ready()) std::this_thread::yield();
  return work.take();
}

}  // namespace

TEST_CASE("what was made comes, and what fails has its trouble until it is asked for again") {
  PanelWork<int> work("the map");
  work.ask([] { return 3; }, {});
  CHECK(awaited(work) == 3);
  CHECK(work.trouble().empty());
  work.ask([]() -> int { throw std::bad_alloc(); }, {});
  CHECK_FALSE(awaited(work));
  REQUIRE(work.trouble().size() == 1);
  CHECK(work.trouble().front().what.find("not enough memory for the map") != std::string::npos);
  work.ask([] { return 4; }, {});
  CHECK(work.trouble().empty());
  CHECK(awaited(work) == 4);
}

TEST_CASE("while wishes come faster than they can be met, what was begun comes, too") {
  PanelWork<int> work("the map");
  Flag begun, go, later;
  work.ask(
      [&] {
        begun.set();
        go.wait();
        return 1;
      },
      {});
  begun.wait();
  work.ask([] { return 2; }, {});
  work.ask(
      [&] {
        later.wait();
        return 3;
      },
      {});
  go.set();
  CHECK(awaited(work) == 1);
  later.set();
  CHECK(awaited(work) == 3);
}
