#include "pattern/ribbon_bands.h"

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "crossed_plan.h"

using namespace laywright;
using laywright::testing::crossed::d;
using laywright::testing::crossed::diameter;

namespace {

GuideCycle cycle_of(double ratio, double pitch_mm) { return {0.5 * ratio * pitch_mm, pitch_mm, 0.0, 0.0}; }

}  // namespace

TEST_CASE("around a ratio of 15 stand the quarters, thirds and the halves, once each") {
  const std::vector<RibbonBand> bands = ribbon_bands(cycle_of(15.0, 20.0), d, diameter, 0.5);
  const double middles[] = {14.5, 44.0 / 3.0, 14.75, 15.0, 15.25, 46.0 / 3.0, 15.5};
  REQUIRE(bands.size() == std::size(middles));
  for (std::size_t i = 0; i < bands.size(); ++i) {
    CAPTURE(i);
    CHECK(bands[i].ratio == Approx(middles[i]));
    CHECK(bands[i].ratio == Approx(static_cast<double>(bands[i].turns) / bands[i].starts));
  }
}

TEST_CASE("at the rim of its band a ratio ceases to be a ribbon") {
  for (const RibbonBand& band : ribbon_bands(cycle_of(15.1, 20.0), d, diameter, 0.5)) {
    for (const double side : {-1.0, 1.0}) {
      CAPTURE(band.starts, band.turns, side);
      const auto at = [&](double share) {
        return pattern_of(cycle_of(band.ratio + side * share * band.half_width, 20.0), d, diameter, 0.1);
      };
      CHECK(at(0.99).kind == PatternKind::ribbon);
      CHECK(at(0.99).nearest.turns == band.turns);
      CHECK(at(1.01).kind != PatternKind::ribbon);
    }
  }
}

TEST_CASE("a pitch has no bands of more strands than leave room between them") {
  // 20 mm is 4 times 2 d for d up to 2.5 mm, 3 times for d up to 3.33 mm.
  for (const auto& [fiber, most] : {std::pair(2.4, 4), std::pair(2.6, 3), std::pair(4.0, 2), std::pair(9.0, 1)}) {
    int greatest = 0;
    for (const RibbonBand& band : ribbon_bands(cycle_of(15.0, 20.0), fiber, diameter, 1.0))
      greatest = std::max(greatest, band.starts);
    CHECK(greatest == most);
  }
  CHECK(ribbon_bands(cycle_of(15.0, 20.0), 10.0, diameter, 1.0).empty());
}
