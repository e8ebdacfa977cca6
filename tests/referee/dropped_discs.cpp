#include "dropped_discs.h"

#include "base/random.h"

namespace laywright::referee {
namespace {

Disc leave(Section& section, const Resting& rest) {
  Disc disc{rest.x, rest.r, {}};
  const bool two_discs =
      rest.in_valley() && rest.left.kind == Contact::Kind::circle && rest.right.kind == Contact::Kind::circle;
  if (two_discs) {
    for (const Contact& contact : {rest.left, rest.right}) {
      const Section::Exposed& below = section[contact.circle];
      disc.between.push_back({below.x, below.r, 0});
    }
  }
  section.insert(rest.x, rest.r, 0);
  return disc;
}

}  // namespace

Section box(double width, double d) {
  return {d, BarrelLine{0.5 * d, 0.0}, FaceLine{0.5 * d, 0.0}, FaceLine{width - 0.5 * d, 0.0}};
}

Disc drop_and_roll(Section& section, double x) {
  // So far below that the pull is straight down wherever the disc rolls.
  const double depth = 1e6 * section.fiber_diameter();
  Resting rest = set_down(section, x);
  settle(section, rest, x, rest.r - depth, FrictionCone(0.0));
  return leave(section, rest);
}

Disc drop_and_stick(Section& section, double x) { return leave(section, set_down(section, x)); }

std::vector<Disc> rain(Section& section, double width, std::size_t count, std::uint64_t seed,
                       const std::function<Disc(Section&, double)>& drop) {
  const double d = section.fiber_diameter();
  Random random(seed);
  std::vector<Disc> discs;
  discs.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double x = 0.5 * d + (width - d) * random.uniform();
    discs.push_back(drop(section, x));
  }
  return discs;
}

}  // namespace laywright::referee
