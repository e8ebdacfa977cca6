#include "base/today.h"

#include <cstdlib>

#include <catch2/catch.hpp>

using namespace laywright;

TEST_CASE("what is made twice is dated alike, where the surroundings say when") {
  ::setenv("SOURCE_DATE_EPOCH", "1709210096", 1);  // 2024-02-29 12:34:56 UTC, by date(1)
  CHECK(today() == "2024-02-29");
  CHECK(moment() == "2024-02-29T12:34:56Z");
  ::setenv("SOURCE_DATE_EPOCH", "yesterday", 1);  // no number of seconds: now
  CHECK(moment() > "2024-02-29T12:34:56Z");
  ::unsetenv("SOURCE_DATE_EPOCH");
  CHECK(moment().size() == 20);
}
