#include <limits>

#include <catch2/catch.hpp>

#include "base/progress.h"

using namespace laywright;

TEST_CASE("a share is within 0 and 1 and rises, and begins anew with 0") {
  Progress progress;
  const auto after = [&](double share) {
    progress.report(share);
    return progress.share();
  };
  CHECK(after(-20.0) == 0.0);
  CHECK(after(0.25) == 0.25);
  CHECK(after(0.125) == 0.25);
  CHECK(after(7.0) == 1.0);
  CHECK(after(0.0) == 0.0);
  CHECK(after(0.5) == 0.5);
  CHECK(after(std::numeric_limits<double>::quiet_NaN()) == 0.0);
}
