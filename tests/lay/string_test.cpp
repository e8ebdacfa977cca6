// The taut string by itself, on surfaces simple enough for closed forms.
#include <cmath>
#include <numbers>
#include <vector>

#include "lay/string_window.h"
#include "plans.h"
#include "usual_fiber.h"

using namespace laywright;
using laywright::testing::usual::d;
using laywright::testing::usual::radius;

namespace {

std::vector<Section> grooved(int stations, double pitch) {
  std::vector<Section> sections;
  for (int i = 0; i < stations; ++i) {
    Section section(d, {radius, 0.0}, {-100.0, 0.0}, {100.0, 0.0});
    for (int turn = -20; pitch > 0.0 && turn <= 20; ++turn) section.insert(turn * pitch, radius, 0);
    sections.push_back(section);
  }
  return sections;
}

// Winds along parallel grooves while the guide walks away; returns the tangent of the fleet angle at which the lay
// point has climbed out of its groove.
double angle_of_escape(int stations, double friction) {
  constexpr double free_length = 400.0;
  std::vector<Section> sections = grooved(stations, d);
  const double angle = 2.0 * std::numbers::pi / stations;
  StringWindow window(sections, friction, angle, static_cast<std::size_t>(stations * 3 / 4), 0.0, 1e-6 * d);
  const double groove = 0.5 * d;
  double guide = groove;
  window.add(groove, 0, {});
  // A walk that is slow beside the angle looked for, so that the string is always close to rest.
  for (int k = 1; k < 200 * stations; ++k) {
    guide += 2e-4 * free_length * angle / (2.0 * std::numbers::pi);
    const Resting& tip = window.last().rest;
    const double stays = std::exp(-angle * tip.r / free_length);
    window.add(guide + (tip.x - guide) * stays, 0, {guide, (1.0 - stays) / stays});
    if (window.last().rest.x > groove + d) return (guide - groove) / free_length;
  }
  return 0.0;
}

// Energy to lift a unit of string out of the groove: what the slope exceeds friction by, from valley to crest
// (d in units of 1): integral of max(0, h' - mu) for h = sqrt(1 - u^2), u from 0 (crest) to 1/2 (valley).
double climb(double mu) {
  const double u = std::min(0.5, mu / std::sqrt(1.0 + mu * mu));
  return std::sqrt(1.0 - u * u) - std::sqrt(0.75) - mu * (0.5 - u);
}

}  // namespace

// tan(fleet angle) = sqrt(2 dE / R), derived from the energy of the string; mu 0 and friction.
TEST_CASE("a groove holds the fiber up to the fleet angle that its depth and friction allow") {
  for (const double mu : {0.0, 0.15, 0.3}) {
    const double expected = std::sqrt(2.0 * climb(mu) * d / (radius + std::sqrt(0.75) * d));
    const double coarse = angle_of_escape(250, mu);
    const double fine = angle_of_escape(1000, mu);
    INFO("mu " << mu << ": expected " << expected << ", 250 stations " << coarse << ", 1000 stations " << fine);
    CHECK(fine == Approx(expected).epsilon(0.1));
  }
}

// A string with bending stiffness, built in at its fixed end and free of moment at the guide, drawn aside without
// friction: x'''' = x'' / l^2 with l^2 = E I / T (beam under tension, textbook closed form).
TEST_CASE("bending stiffness bends the string like a beam under tension") {
  const int stations = 400;
  const double angle = 2.0 * std::numbers::pi / stations;
  std::vector<Section> sections = grooved(stations, 0.0);
  const double step = radius * angle;
  const double length = 12.0;  // mm; E I / T = 144 mm^2
  const std::size_t movable = 60;
  StringWindow window(sections, 0.0, angle, movable, length * length, 1e-9);
  const double aside = 0.02;
  for (std::size_t k = 0; k < 120; ++k) window.add(0.0, 0, {0.0, HUGE_VAL});
  window.add(aside, 0, {aside, HUGE_VAL});
  const std::size_t tip = window.size() - 1;
  const std::size_t fixed = window.first_movable() - 1;
  // Two fixed nodes in line: the string is built in halfway between them.
  const double span = (static_cast<double>(tip - fixed) + 0.5) * step;
  const double scale = aside / (span * std::cosh(span / length) - length * std::sinh(span / length));
  for (std::size_t k = fixed + 5; k < tip; k += 10) {
    const double s = (static_cast<double>(k - fixed) + 0.5) * step;
    const double x = scale * (s * std::cosh(span / length) +
                              length * (std::sinh((span - s) / length) - std::sinh(span / length)));
    CHECK(window.node(k).rest.x == Approx(x).epsilon(0.02).margin(1e-5 * aside));
  }
}

// Where the span lies in a groove ahead of the lay point, the fiber bends up to the lay point, free of moment there, and runs
// straight from it to the groove. x = a + b s + c cosh(s / l) + e sinh(s / l), built in at 0 and without moment at L, has the
// shear T b all along (beam under tension, as above); so b = (x of the groove - x(L)) over the straight piece.
TEST_CASE("fiber that is stiff bends up to the lay point, also where its span touches a turn ahead") {
  constexpr int stations = 400;
  constexpr double angle = 2.0 * std::numbers::pi / stations;
  constexpr double step = radius * angle;
  constexpr double length = 4.0;
  constexpr double aside = 0.02;
  constexpr std::size_t ahead = 3;
  constexpr std::size_t lay_point = 100;
  std::vector<Section> sections = grooved(stations, 0.0);
  for (const double x : {aside - 0.5 * d, aside + 0.5 * d}) sections[lay_point + ahead].insert(x, radius, 0);
  StringWindow window(sections, 0.0, angle, 60, length * length, 1e-9);
  for (std::size_t k = 0; k < lay_point; ++k) window.add(0.0, 0, {0.0, HUGE_VAL});
  window.add(0.0, 0, {aside, 0.01});
  REQUIRE(window.ahead() == ahead);
  const std::size_t fixed = window.first_movable() - 1;
  const double bent = (static_cast<double>(lay_point - fixed) + 0.5) * step;
  const double straight = static_cast<double>(ahead) * step;
  // With c = 1: e from the moment, then a = -1 and b = -e / l from the built-in end; all in proportion to the groove's x.
  const double e = -std::cosh(bent / length) / std::sinh(bent / length);
  const double b = -e / length;
  const auto shape = [&](double s) { return -1.0 + b * s + std::cosh(s / length) + e * std::sinh(s / length); };
  const double scale = aside / (shape(bent) + b * straight);
  for (std::size_t k = fixed + 15; k <= lay_point; k += 5) {
    CAPTURE(lay_point - k);
    CHECK(window.node(k).rest.x ==
          Approx(scale * shape((static_cast<double>(k - fixed) + 0.5) * step)).epsilon(0.02));
  }
}

// A taut string over a bump of height d on a round barrel runs straight from the bump to where it is tangent to the
// barrel, at the angle whose cosine is R / (R + d) (plane geometry); between, r = R / cos(angle from the tangent point).
TEST_CASE("fiber over a bump hangs straight down to the barrel on either hand") {
  const int stations = 1000;
  const double angle = 2.0 * std::numbers::pi / stations;
  std::vector<Section> sections = grooved(stations, 0.0);
  const std::size_t bump = 300;
  sections[bump].insert(0.0, radius, 0);
  StringWindow window(sections, Fiber::held, angle, 500, 0.0, 1e-9);
  for (std::size_t k = 0; k < 450; ++k) window.add(0.0, 0, {0.0, HUGE_VAL});
  CHECK(window.node(bump).rest.r == Approx(radius + d).epsilon(1e-12));
  const double reach = std::acos(radius / (radius + d));
  for (std::size_t k = bump - 100; k <= bump + 100; ++k) {
    const double from_bump = std::abs(static_cast<double>(k) - static_cast<double>(bump)) * angle;
    const double straight = from_bump < reach ? radius / std::cos(reach - from_bump) : radius;
    INFO("node " << from_bump << " rad from the bump, which reaches " << reach << " rad");
    CHECK(window.node(k).rest.r == Approx(straight).margin(2e-3 * d));
    if (std::abs(from_bump - reach) > 2.0 * angle && k != bump)
      CHECK(window.node(k).rest.lifted() == (from_bump < reach));
  }
}

// A straight line that leaves a circle of radius R stands s^2 / (2 R) over it after s. A turn at the height of the lay
// point, 0.3 d aside, reaches sqrt(1 - 0.3^2) d above it.
TEST_CASE("the free span meets a turn ahead as far away as a straight line rises above it") {
  constexpr int stations = 1000;
  constexpr double angle = 2.0 * std::numbers::pi / stations;
  constexpr double aside = 0.3 * d;
  constexpr std::size_t begins = 200;
  std::vector<Section> sections;
  for (std::size_t i = 0; i < stations; ++i) {
    Section section(d, {radius, 0.0}, {-100.0, 0.0}, {100.0, 0.0});
    if (i >= begins) section.insert(0.0, radius, 0);
    sections.push_back(section);
  }
  StringWindow window(sections, 0.5, angle, stations * 3 / 4, 0.0, 1e-6 * d);
  const double stays = std::exp(-angle * radius / 200.0);
  std::size_t met = 0;
  for (std::size_t k = 0; k < begins && met == 0; ++k) {
    window.add(aside, 0, {aside, (1.0 - stays) / stays});
    if (window.ahead() > 0) met = k;
  }
  const double rise = std::sqrt(1.0 - 0.3 * 0.3) * d;
  const double expected = std::sqrt(2.0 * rise / radius) / angle;
  INFO("met " << begins - met << " stations ahead");
  CHECK(static_cast<double>(begins - met) == Approx(expected).margin(1.0));
  // And climbs it: the lay point lies on the turn, above its middle.
  for (std::size_t k = met + 1; k < begins + 200; ++k) window.add(aside, 0, {aside, (1.0 - stays) / stays});
  CHECK(window.last().rest.r > radius + 0.9 * d);
}

// Geodesic curvature over normal curvature cannot exceed mu (filament-winding literature, e.g.
// DOI 10.1177/0892705706049561). R 37.5, angle 15.196 deg, mu 0.3: the turn-round is 4.693 mm deep; the string law is
// second order in slopes, where the depth is slope^2 / (2 mu R) = 4.61 mm.
TEST_CASE("a steep reversal slips back until friction holds its curvature") {
  PlanDraft draft = testing::plain_draft();
  draft.spool.barrel_diameter_mm = 75.0 - 0.05;
  draft.spool.flange_diameter_mm = 120.0;
  draft.spool.inside_width_mm = 200.0;
  draft.fiber.diameter_mm = 0.05;
  draft.fiber.friction = 0.3;
  draft.traverse.pitch_mm = std::numbers::pi * 75.0 * std::tan(15.196 * std::numbers::pi / 180.0);
  draft.traverse.left_stop_mm = 20.0;
  draft.traverse.right_stop_mm = 20.0;
  draft.traverse.free_length_mm = 0.0;
  draft.wind.turns = 4.0;
  const double slope = draft.traverse.pitch_mm / (2.0 * std::numbers::pi);
  const double published = slope * slope / (2.0 * 0.3 * 37.5);
  const auto depth = [&](FiberSection section, double fidelity) {
    draft.fiber.section = section;
    const Build build = testing::laid(draft, {.seed = 1, .fidelity = fidelity});
    double farthest = 0.0;
    for (std::size_t k = 0; k < build.end_of(1); ++k) farthest = std::max(farthest, build.nodes.x(k));
    return 180.0 - farthest;
  };
  const double flat = depth(FiberSection::flat, 0.25);
  CHECK(flat == Approx(published).epsilon(0.02));
  CHECK(flat == Approx(4.693).epsilon(0.04));
  // A round fiber rolls a little further back than it slips, and as far on a finer mesh.
  const double coarse = depth(FiberSection::round, 0.25);
  CHECK(coarse > published);
  CHECK(coarse == Approx(published).epsilon(0.03));
  CHECK(depth(FiberSection::round, 1.0) == Approx(coarse).epsilon(0.005));
}
