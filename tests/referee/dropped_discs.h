// Equal discs dropped one by one onto a flat floor between two walls.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "lay/penetration_checker.h"
#include "lay/settle.h"

namespace laywright::referee {

struct Disc {
  double x = 0.0, r = 0.0;  // r: height of the centre above the floor
  // Centres of the discs that it came to rest between; empty unless it rests on two discs.
  std::vector<Centre> between;
};

// A floor at r = 0 with walls at x = 0 and x = width, for discs of diameter d.
[[nodiscard]] Section box(double width, double d);

// Sets a disc down at x, lets it roll, pulled straight down and without friction, until it rests, and leaves it.
Disc drop_and_roll(Section& section, double x);

// Sets a disc down at x, where it sticks.
Disc drop_and_stick(Section& section, double x);

// Drops `count` discs at uniform random x.
[[nodiscard]] std::vector<Disc> rain(Section& section, double width, std::size_t count, std::uint64_t seed,
                                     const std::function<Disc(Section&, double)>& drop);

}  // namespace laywright::referee
