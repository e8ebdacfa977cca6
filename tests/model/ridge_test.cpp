// Ridges at the flanges: what a guide that stands at its stops builds (it is known to build an end ridge: US patent class
// 242/477.3, definition), and that a fiber that rolls off does not stand there in columns, whatever the mesh.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "bench/spread.h"
#include "lay/torsion.h"
#include "usual_fiber.h"
#include "wound.h"

using namespace laywright;
using laywright::testing::usual::d;
using testing::Wound;
using testing::wound;

namespace {

constexpr int draws = 5;

PlanDraft spool(double dwell, double friction, int draw) {
  PlanDraft draft;
  draft.spool.barrel_diameter_mm = 150.0;
  draft.spool.flange_diameter_mm = 236.0;
  draft.spool.inside_width_mm = 95.0;
  draft.fiber.diameter_mm = d;
  draft.fiber.friction = friction;
  draft.traverse.pitch_mm = 0.26;
  // Winds that differ by less than can be set.
  draft.traverse.left_stop_mm = 0.125 + 0.0013 * (draw - 2);
  draft.traverse.right_stop_mm = 0.125 - 0.0017 * (draw - 2);
  draft.traverse.free_length_mm = 100.0;
  if (dwell > 0.0) draft.traverse.reversal = {ReversalKind::dwell, dwell, 0.0, 0.0};
  draft.wind.turns = 8000.0;
  return draft;
}

// Length of the longest run of fiber that stands on two single turns, one straight on another, mm.
double longest_column_mm(const Build& build) {
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  std::vector<int> high(build.nodes.size(), 1);
  std::vector<std::vector<std::size_t>> at(stations);
  std::size_t run = 0;
  std::size_t longest = 0;
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    std::vector<std::size_t>& below = at[k % stations];
    // What carries it was laid within the last strokes: look back as far as a stroke and a half has turns.
    const std::size_t far = std::min<std::size_t>(below.size(), 550);
    for (std::size_t i = 0; i < far; ++i) {
      const std::size_t j = below[below.size() - 1 - i];
      const double dx = std::abs(build.nodes.x(k) - build.nodes.x(j));
      const double dr = build.nodes.r(k) - build.nodes.r(j);
      if (dx < 0.1 * d && dr > 0.0 && dr < 1.01 * d) high[k] = std::max(high[k], high[j] + 1);
    }
    below.push_back(k);
    run = high[k] >= 3 ? run + 1 : 0;
    longest = std::max(longest, run);
  }
  return static_cast<double>(longest) * 2.0 * 3.14159265358979 / build.stations_per_turn * 75.0;
}

// Steepest slope of the mean surface over five diameters within a tenth of the width from either flange, deg.
double steepest_face_deg(const Wound& w) {
  const SurfaceProfile& surface = w.measured.surface;
  const double step = surface.x_mm[1] - surface.x_mm[0];
  const auto five = static_cast<std::size_t>(std::lround(5.0 * d / step));
  double steepest = 0.0;
  for (std::size_t i = 0; i + five < surface.x_mm.size(); ++i) {
    if (surface.x_mm[i] > 9.5 && surface.x_mm[i + five] < 85.5) continue;
    steepest = std::max(
        steepest, std::abs(surface.mean_mm[i + five] - surface.mean_mm[i]) / (static_cast<double>(five) * step));
  }
  return std::atan(steepest) * 180.0 / 3.14159265358979;
}

struct Ridges {
  double mean = 0.0;
  double steepest_deg = 0.0;
};

Ridges ridges(double dwell) {
  Ridges all;
  for (int draw = 0; draw < draws; ++draw) {
    const Wound w = wound(spool(dwell, 0.5, draw));
    const EdgeShapes& edges = w.measured.edges.value();
    all.mean += (edges[0].ridge_mm + edges[1].ridge_mm) / (2.0 * d * draws);
    all.steepest_deg = std::max(all.steepest_deg, steepest_face_deg(w));
  }
  return all;
}

}  // namespace

TEST_CASE("the longer the guide stands, the higher the ridge, as a slope and not as a wall") {
  double last = 0.0;
  for (const double dwell : {0.0, 2.0, 5.0, 10.0}) {
    const Ridges now = ridges(dwell);
    INFO("dwell " << dwell << ": ridge " << now.mean << " d, steepest face " << now.steepest_deg << " deg; before "
                  << last << " d");
    if (dwell == 0.0) CHECK(now.mean < 1.0);
    if (dwell > 0.0) CHECK(now.mean > last + 0.5);
    CHECK(now.steepest_deg < 60.0);
    last = now.mean;
  }
  CHECK(last > 5.0);
}

// A heap of discs on a random base has a slope of 52 degrees (Acharyya, 'Structural properties of planar random heap of
// hard discs', abstract); flat fiber, which does not roll, stands steeper than that.
TEST_CASE("a round fiber does not stand in columns, a flat one does") {
  PlanDraft draft = spool(10.0, 0.5, 2);
  const Wound round = wound(draft);
  draft.fiber.section = FiberSection::flat;
  const Wound flat = wound(draft);
  const double critical = critical_length_mm(torsion_of(check(draft).value()).over_tension(), d, 75.0);
  const double of_round = longest_column_mm(round.build);
  const double of_flat = longest_column_mm(flat.build);
  INFO("columns of three: round " << of_round << " mm, flat " << of_flat << " mm; critical length " << critical);
  CHECK(of_round < 3.0 * critical);
  CHECK(of_flat > 10.0 * critical);
  CHECK(steepest_face_deg(flat) > 60.0);
}

// Beside twist, bending is small at any length that nodes resolve. Left on the diagonal of the rolling step it held what falls
// as a whole: a guide beyond the flange then built a wall of single turns.
TEST_CASE("fiber whose bending counts does not stand in columns either, where the guide leads it into the flange") {
  PlanDraft draft = spool(0.0, 0.4, 2);
  draft.traverse.right_stop_mm = -1.5;
  draft.traverse.free_length_mm = 40.0;
  draft.fiber.core_diameter_mm = 0.125;
  draft.fiber.modulus_MPa = 72e3;
  draft.wind.tension_N = 0.5;
  draft.wind.turns = 2000.0;
  const double critical = critical_length_mm(torsion_of(check(draft).value()).over_tension(), d, 75.0);
  const Wound w = wound(draft);
  const double longest = longest_column_mm(w.build);
  INFO("columns of three: " << longest << " mm; critical length " << critical);
  CHECK(longest < 3.0 * critical);
}

// A narrow spool with the guide near to it: what comes out varies little from wind to wind, so that few of them tell.
TEST_CASE("twice the stations change the mean of ridges by less than a tenth") {
  const auto mean = [&](double dwell, int winds, double fidelity) {
    double sum = 0.0;
    for (int wind = 0; wind < winds; ++wind) {
      PlanDraft draft = spool(dwell, 0.5, 2);
      draft.spool.inside_width_mm = 30.0;
      draft.traverse.free_length_mm = 20.0;
      // Within a thousandth to either side.
      draft.traverse.pitch_mm = 0.26 * (0.999 + 0.002 * bench::evenly(wind));
      draft.wind.turns = 1500.0;
      const EdgeShapes edges = wound(draft, fidelity).measured.edges.value();
      sum += edges[0].ridge_mm + edges[1].ridge_mm;
    }
    return sum / (2.0 * d * winds);
  };
  // So many that chance moves the means of both by about a fiftieth (standard deviations of single winds .3 and .2 d).
  for (const auto& [dwell, winds] : {std::pair{5.0, 12}, std::pair{10.0, 6}}) {
    const double once = mean(dwell, winds, 1.0);
    const double twice = mean(dwell, winds, 2.0);
    INFO("dwell " << dwell << ": " << once << " d, with twice the stations " << twice << " d");
    CHECK(twice == Approx(once).epsilon(0.1));
  }
}

TEST_CASE("a long dwell is told as piled edges whatever friction and mesh") {
  for (const double friction : {0.3, 0.5, 0.7}) {
    for (const double fidelity : {0.5, 1.0}) {
      const Measurements piled = wound(spool(5.0, friction, 2), fidelity).measured;
      INFO("friction " << friction << ", fidelity " << fidelity);
      CHECK(std::any_of(piled.findings.begin(), piled.findings.end(),
                        [](const Finding& f) { return f.kind == FindingKind::pile_up; }));
    }
  }
}
