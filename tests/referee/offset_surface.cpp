// The section keeps exposed circles only. Its offset surface must be that of all circles that ever came into it.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "base/random.h"
#include "dropped_discs.h"

using namespace laywright;
using referee::Disc;

namespace {

// Over every circle, forgotten or not.
double highest(const std::vector<Disc>& discs, double floor, double x, double d) {
  double r = floor;
  for (const Disc& disc : discs) {
    const double dx = x - disc.x;
    if (std::abs(dx) < d) r = std::max(r, disc.r + std::sqrt(d * d - dx * dx));
  }
  return r;
}

// How far a disc of diameter 1 has come into any that was there before, or under its overhang.
double depth_into(const std::vector<Disc>& discs, const Disc& disc) {
  double depth = 0.0;
  for (const Disc& other : discs) {
    const double dx = disc.x - other.x;
    depth = std::max(depth, 1.0 - (disc.r < other.r ? std::abs(dx) : std::hypot(dx, disc.r - other.r)));
  }
  return depth;
}

// How discs are dropped.
struct Rain {
  double width = 1.0;
  double stick = 0.0;    // share that sticks where it lands; the rest rolls
  double at_wall = 0.0;  // share dropped along a wall: towers at one x, or nearly
};

// Drops discs of diameter 1 and compares the surface now and then at many x, and each disc with all before it, since
// discs find the narrow places. Returns the greatest difference.
double worst_difference(const Rain& rain, std::size_t count, std::uint64_t seed) {
  Section section = referee::box(rain.width, 1.0);
  Random random(seed);
  const double low = 0.5;
  const double high = rain.width - 0.5;
  std::vector<Disc> discs;
  double worst = 0.0;
  while (discs.size() < count) {
    const bool at_wall = random.uniform() < rain.at_wall;
    const double place = random.uniform();
    const double jitter = random.uniform() < 0.5 ? 0.0 : 1e-9 * place;
    const double x = at_wall ? (place < 0.5 ? low + jitter : high - jitter) : low + (high - low) * place;
    const bool sticks = random.uniform() < rain.stick;
    const Disc disc = sticks ? referee::drop_and_stick(section, x) : referee::drop_and_roll(section, x);
    worst = std::max(worst, depth_into(discs, disc));
    discs.push_back(disc);
    if (discs.size() % 10 != 0) continue;
    for (int i = 0; i < 20; ++i) {
      const double at = low + (high - low) * random.uniform();
      worst = std::max(worst, std::abs(section.height(at).r - highest(discs, 0.5, at, 1.0)));
    }
  }
  return worst;
}

}  // namespace

TEST_CASE("the offset surface is that of all circles ever laid") {
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    INFO("seed " << seed);
    CHECK(worst_difference({25.0, 0.0, 0.0}, 3000, seed) < 1e-9);
    CHECK(worst_difference({25.0, 1.0, 0.0}, 3000, seed) < 1e-9);
    CHECK(worst_difference({40.0, 0.3, 0.2}, 3000, seed) < 1e-9);
    CHECK(worst_difference({12.0, 1.0, 0.6}, 400, seed) < 1e-9);
    CHECK(worst_difference({2.5, 0.3, 0.4}, 500, seed) < 1e-9);
    CHECK(worst_difference({1.2, 0.3, 0.4}, 300, seed) < 1e-9);
  }
}

TEST_CASE("a tower at the wall is not forgotten when a disc falls beside its foot") {
  Section section = referee::box(10.0, 1.0);
  for (const double r : {2.5, 3.5}) section.insert(0.5, r, 0);
  section.insert(1.6, 0.5, 0);
  CHECK(section.height(0.5).r == Approx(4.5));
  CHECK(section.height(1.4).r == Approx(3.5 + std::sqrt(1.0 - 0.81)));
  CHECK(section.height(1.6).r == Approx(1.5));
}
