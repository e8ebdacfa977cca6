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
double highest(const std::vector<Disc>& discs, std::size_t count, double floor, double x, double d) {
  double r = floor;
  for (std::size_t i = 0; i < count; ++i) {
    const double dx = x - discs[i].x;
    if (std::abs(dx) < d) r = std::max(r, discs[i].r + std::sqrt(d * d - dx * dx));
  }
  return r;
}

// Drops discs and compares the surface now and then at many x. Returns the greatest difference, in d.
double worst_difference(double width, double d, std::size_t count, std::uint64_t seed, double stick_share) {
  Section section = referee::box(width, d);
  Random choice(seed + 100);
  std::vector<Disc> discs;
  double worst = 0.0;
  const auto drop = [&](Section& into, double x) {
    const Disc disc = choice.uniform() < stick_share ? referee::drop_and_stick(into, x) : referee::drop_and_roll(into, x);
    discs.push_back(disc);
    if (discs.size() % 50 == 0) {
      for (int i = 0; i < 40; ++i) {
        const double at = 0.5 * d + (width - d) * choice.uniform();
        const double exact = highest(discs, discs.size(), 0.5 * d, at, d);
        worst = std::max(worst, std::abs(into.height(at).r - exact) / d);
      }
    }
    return disc;
  };
  (void)referee::rain(section, width, count, seed, drop);
  return worst;
}

}  // namespace

TEST_CASE("the offset surface is that of all circles ever laid") {
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    INFO("seed " << seed);
    CHECK(worst_difference(25.0, 1.0, 3000, seed, 0.0) < 1e-9);
    CHECK(worst_difference(25.0, 1.0, 3000, seed, 1.0) < 1e-9);
    CHECK(worst_difference(40.0, 1.0, 3000, seed, 0.3) < 1e-9);
    // Narrow boxes: most circles stand at a wall, at equal x.
    CHECK(worst_difference(2.5, 1.0, 1000, seed, 0.3) < 1e-9);
    CHECK(worst_difference(1.2, 1.0, 300, seed, 0.3) < 1e-9);
  }
}

TEST_CASE("circles at one x: the highest counts") {
  Section section = referee::box(10.0, 1.0);
  section.insert(0.5, 0.5, 0);
  section.insert(0.5, 1.5, 0);
  section.insert(1.5, 0.5, 0);
  section.insert(0.5, 2.5, 0);
  section.insert(2.5, 0.5, 0);
  CHECK(section.height(0.5).r == Approx(3.5));
  CHECK(section.height(1.4).r == Approx(2.5 + std::sqrt(1.0 - 0.81)));
}
