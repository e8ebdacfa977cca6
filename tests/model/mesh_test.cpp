// The figures of a build must not depend on the number of stations: the samples at the model's own count and at twice
// that. Middle diameter, fill, turns per layer and gap length within 1 % where the wind stays ordered, 3 % where it does
// not. Gap length counts as a share of the fiber: in an even build hardly any is left to compare.
#include <algorithm>
#include <cmath>
#include <string>

#include "wound.h"

using namespace laywright;
using testing::sample;
using testing::wound;

namespace {

double gap_share(const Measurements& m) {
  double gaps = 0.0;
  double length = 0.0;
  for (const LayerRow& row : m.layers) {
    gaps += row.gap_length_mm;
    length += row.length_mm;
  }
  return gaps / length;
}

double turns_per_layer(const Measurements& m) {
  if (m.layers.size() < 2) return m.layers.front().turns;
  double turns = 0.0;
  for (std::size_t i = 0; i + 1 < m.layers.size(); ++i) turns += m.layers[i].turns;
  return turns / static_cast<double>(m.layers.size() - 1);
}

void agree(const std::string& name, double share, double gaps) {
  const Plan plan = sample(name);
  const Measurements once = wound(plan).measured;
  const Measurements twice = wound(plan, 2.0).measured;
  INFO(name);
  CHECK(twice.outer_diameter.middle_mm == Approx(once.outer_diameter.middle_mm).epsilon(share));
  CHECK(twice.outer_diameter.left_mm == Approx(once.outer_diameter.left_mm).epsilon(share));
  CHECK(twice.outer_diameter.right_mm == Approx(once.outer_diameter.right_mm).epsilon(share));
  CHECK(twice.fill_factor == Approx(once.fill_factor).epsilon(share));
  CHECK(turns_per_layer(twice) == Approx(turns_per_layer(once)).epsilon(share));
  CHECK(gap_share(twice) == Approx(gap_share(once)).margin(gaps));
}

}  // namespace

TEST_CASE("ordered samples do not depend on the mesh") {
  for (const char* name :
       {"even", "parallel", "magnet-wire", "loose-traverse", "tapered-flanges", "turns-back-early"}) {
    agree(name, 0.01, 0.01);
  }
}

TEST_CASE("disordered samples hardly depend on the mesh") {
  for (const char* name : {"long-dwell", "turns-back-late", "pitch-too-fine", "pitch-too-coarse"}) {
    agree(name, 0.03, 0.03);
  }
  // Towers of a ribbon: whether a turn falls to one side or the other is chance, and moves what it fills by some percent.
  agree("whole-ratio", 0.05, 0.05);
}
